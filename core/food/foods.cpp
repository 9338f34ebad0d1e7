#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>

#include "core/food/allergen_bits.h"
#include "core/food/food.h"

// The table is read at compile time: rows as people write them (table/*.inc) become the Foods the rest sees, with
// the sources that a row leaves out filled in. Nothing of it runs when the program starts.

namespace tamis::food {
namespace {

using namespace allergen;  // the words of the rows: milk, egg, nuts, ...
constexpr double na = std::numeric_limits<double>::quiet_NaN();

/// One row as it is written. See table/README.md for what each field wants.
struct Row {
  std::string_view id = {};
  std::string_view english = {};
  std::string_view french = {};
  Role role = Role::other;
  Composition per_100_g = {na, na, na, na, na, na, na, na, na, na, na};
  std::string_view composition_source = {};
  Measure measures[20] = {};             // as many as wanted; the rest stays empty
  std::string_view measure_source = {};  // of measures that name none; composition_source when empty
  double refuse_pct = na;                // in percent, as USDA prints it
  std::string_view refuse_source = {};   // composition_source when empty
  std::string_view splits = {};
  std::string_view splits_source = {};
  Allergens allergens = 0;
  std::string_view allergen_source = {};  // the lists themselves when empty
};

// The order of the files is the order of the foods.
// clang-format off
constexpr Row rows[] = {
#include "core/food/table/dairy.inc"
#include "core/food/table/eggs.inc"
#include "core/food/table/flours_starches.inc"
#include "core/food/table/sugars.inc"
#include "core/food/table/fats.inc"
#include "core/food/table/chocolate_nuts.inc"
#include "core/food/table/setting_leavening.inc"
#include "core/food/table/fruit.inc"
#include "core/food/table/vegetables.inc"
#include "core/food/table/herbs_spices.inc"
#include "core/food/table/meat.inc"
#include "core/food/table/fish.inc"
#include "core/food/table/liquids_alcohol.inc"
#include "core/food/table/pantry.inc"
};
// clang-format on

constexpr std::string_view lists =
    "Regulation (EU) 1169/2011 Annex II; US FALCPA 2004 and FASTER Act 2021; assumed for the generic food";

constexpr std::string_view first_of(std::string_view own, std::string_view row) { return own.empty() ? row : own; }

constexpr std::size_t count_measures(const Row& row) {
  std::size_t count = 0;
  while (count < std::size(row.measures) && !row.measures[count].what.empty()) ++count;
  return count;
}

constexpr std::size_t count_measures() {
  std::size_t count = 0;
  for (const Row& row : rows) count += count_measures(row);
  return count;
}

constexpr auto all_measures = [] {
  std::array<Measure, count_measures()> all{};
  std::size_t at = 0;
  for (const Row& row : rows) {
    for (std::size_t i = 0; i < count_measures(row); ++i, ++at) {
      all[at] = row.measures[i];
      all[at].source = first_of(all[at].source, first_of(row.measure_source, row.composition_source));
    }
  }
  return all;
}();

constexpr Food food_from(const Row& row, std::span<const Measure> measures) {
  const bool trimmed = row.refuse_pct == row.refuse_pct;
  return {.id = row.id,
          .english = row.english,
          .french = row.french,
          .role = row.role,
          .per_100_g = row.per_100_g,
          .composition_source = row.composition_source,
          .measures = measures,
          .trim_share = trimmed ? row.refuse_pct / 100 : na,
          .trim_source = trimmed ? first_of(row.refuse_source, row.composition_source) : std::string_view(),
          .splits = row.splits,
          .splits_source = row.splits_source,
          .allergens = row.allergens,
          .allergen_source = row.allergens == 0 ? row.allergen_source : first_of(row.allergen_source, lists)};
}

constexpr auto all_foods = [] {
  std::array<Food, std::size(rows)> all{};
  std::size_t at = 0;
  std::size_t measure = 0;
  for (const Row& row : rows) {
    all[at++] = food_from(row, std::span(all_measures).subspan(measure, count_measures(row)));
    measure += count_measures(row);
  }
  return all;
}();

/// Places of the foods in order of their ids, for food_by_id.
constexpr auto by_id = [] {
  std::array<unsigned short, std::size(rows)> order{};
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<unsigned short>(i);
  std::sort(order.begin(), order.end(), [](auto a, auto b) { return rows[a].id < rows[b].id; });
  return order;
}();

}  // namespace

std::span<const Food> foods() { return all_foods; }

const Food* food_by_id(std::string_view id) {
  const auto before = [](unsigned short place, std::string_view wanted) { return all_foods[place].id < wanted; };
  const auto found = std::lower_bound(by_id.begin(), by_id.end(), id, before);
  return found != by_id.end() && all_foods[*found].id == id ? &all_foods[*found] : nullptr;
}

}  // namespace tamis::food
