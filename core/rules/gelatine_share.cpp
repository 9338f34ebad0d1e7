#include "core/rules/gelatine_share.h"

#include "core/measure/number.h"
#include "core/measure/read.h"
#include "core/physics/gelatine.h"
#include "core/rules/food_kinds.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double gelatine_in_mass = 1.0 / 6;

/// As the line states it, else the house's own food.
double bloom_of(const Check& check, const fiche::Ingredient& line) {
  const auto read = measure::read_number(check.document.get(line.node, fiche::At::bloom), check.fiche.reading);
  if (read && *read > 0) return read->approximate();
  const auto* own = check.kitchen.own_food(line.food_id);
  return own != nullptr && own->bloom && *own->bloom > 0 ? *own->bloom : physics::usual_bloom;
}

}  // namespace

std::optional<flow::Range> gelatine_share(const Check& check, int step) {
  flow::Range sum;
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    const unsigned kinds = food_kinds(check).things[i] & kind::any_gelatine;
    if (thing.kind != flow::Thing::Kind::ingredient || kinds == 0) continue;
    const auto share = check.states().held(step, static_cast<int>(i));
    if (!share) return std::nullopt;
    const double factor =
        physics::gelatine_factor(bloom_of(check, check.fiche.ingredients[at(thing.ingredient)]), physics::usual_bloom) *
        (kinds == kind::gelatine_mass ? gelatine_in_mass : 1);
    sum.low += share->low * factor;
    sum.high += share->high * factor;
  }
  return sum;
}

}  // namespace tamis::rules
