#include "core/change/scale_count.h"

#include <algorithm>
#include <array>

namespace tamis::change {

using base::Ratio;
using food::Role;

namespace {

bool is_kept_whole(std::string_view unit) {
  constexpr std::array words = {"leaf", "sheet", "clove", "sprig", "cube", "envelope", "packet", "bag"};
  return std::find(words.begin(), words.end(), unit) != words.end();
}

}  // namespace

bool is_egg(const food::Food* food) { return food != nullptr && food->role == Role::egg; }

Ratio step_of_count(const food::Food* food, const measure::Unit& unit, Ratio exact) {
  const Ratio half(1, 2);
  if (unit.rough) return exact < 2 ? half : Ratio(1);
  if (is_kept_whole(unit.id) || is_egg(food)) return 1;
  const bool spice = food != nullptr && (food->role == Role::spice || food->role == Role::garnish);
  if (spice && food->id != "vanilla-bean") return 1;
  return exact < 4 ? half : Ratio(1);
}

Ratio whole_count(const food::Food* food, const measure::Unit& unit, Ratio exact) {
  const Ratio step = step_of_count(food, unit, exact);
  Ratio count = base::round_to(exact, step);
  if (is_egg(food) && count < exact && exact - count > exact * food::tolerance_of(food->role)) count = count + 1;
  return count < step ? step : count;
}

}  // namespace tamis::change
