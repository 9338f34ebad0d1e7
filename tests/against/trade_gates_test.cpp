// Temperatures, shares and masses that the trade works to, against the reference rows: each row is answered by one figure
// of ours. Every row's own source stands in the reference; ours stand in core/rules/trade_figures.inc.

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <map>
#include <string>

#include "core/food/food.h"
#include "core/physics/gelatine.h"
#include "core/rules/trade_figures.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

using namespace tamis;
namespace figures = rules::figures;

namespace {

double leaf(std::string_view grade) {
  for (const food::Measure& measure : food::food_by_id("gelatine-leaf")->measures)
    if (measure.what == "leaf" && measure.note == grade) return measure.grams;
  return std::nan("");
}

/// n in C1 x B1^n = C2 x B2^n.
double bloom_exponent() { return std::log(physics::gelatine_factor(2, 1)) / std::log(2.0); }
double to_fahrenheit(double celsius) { return celsius * 1.8 + 32; }
constexpr double sea_boils = 100;

struct Row {
  const char* id;
  double ours;
};

const std::array rows{
    Row{"gate-001", figures::custard_cooks.low},
    Row{"gate-002", figures::custard_cooks.high},
    Row{"gate-003", figures::pastry_cream_boils.low},
    Row{"gate-004", figures::egg_white_sets.low},
    Row{"gate-005", figures::egg_white_sets.high},
    Row{"gate-006", figures::egg_yolk_sets.low},
    Row{"gate-007", figures::whole_egg_sets.low},
    Row{"gate-008", figures::egg_white_ovotransferrin.low},
    Row{"gate-009", figures::egg_white_ovomucoid.low},
    Row{"gate-010", figures::egg_white_ovalbumin.low},
    Row{"gate-011", figures::egg_white_starts_to_set.low},
    Row{"gate-012", figures::egg_yolk_thickens.low},
    Row{"gate-013", figures::egg_yolk_thickens.high},
    Row{"gate-014", bloom_exponent()},
    Row{"gate-015", physics::gelatine_factor(200, 100)},
    Row{"gate-016", physics::gelatine_factor(220, 160)},
    Row{"gate-017", physics::gelatine_factor(120, 240)},
    Row{"gate-018", physics::gelatine_factor(180, 240)},
    Row{"gate-019", physics::gelatine_factor(260, 200)},
    Row{"gate-020", leaf("bronze")},
    Row{"gate-021", figures::leaf_gold_bloom.low},
    Row{"gate-022", figures::leaf_gold_bloom.high},
    Row{"gate-023", figures::leaf_platinum_bloom.low},
    Row{"gate-024", figures::leaf_platinum_bloom.high},
    Row{"gate-025", leaf("platinum")},
    Row{"gate-026", leaf("silver")},
    Row{"gate-027", figures::gelatine_melts.low},
    Row{"gate-028", figures::gelatine_melts.high},
    Row{"gate-029", figures::gelatine_dissolves.low},
    Row{"gate-030", figures::gelatine_dissolves.high},
    Row{"gate-031", figures::dark_chocolate_melts.low},
    Row{"gate-032", figures::dark_chocolate_melts.high},
    Row{"gate-033", figures::dark_chocolate_cools.low},
    Row{"gate-034", figures::dark_chocolate_cools.high},
    Row{"gate-035", figures::milk_chocolate_cools.low},
    Row{"gate-036", figures::milk_chocolate_cools.high},
    Row{"gate-037", figures::white_chocolate_melts.low},
    Row{"gate-038", figures::white_chocolate_cools.low},
    Row{"gate-039", figures::white_chocolate_cools.high},
    Row{"gate-040", figures::milk_chocolate_works.low},
    Row{"gate-041", figures::milk_chocolate_works.high},
    Row{"gate-042", figures::white_chocolate_works.low},
    Row{"gate-043", figures::white_chocolate_works.high},
    Row{"gate-044", figures::cream_fat.low},
    Row{"gate-045", figures::cream_to_whip_fat.low},
    Row{"gate-046", figures::half_and_half_fat.low},
    Row{"gate-047", to_fahrenheit(figures::ultra_pasteurised.low)},
    Row{"gate-048", figures::cream_whips.low},
    Row{"gate-049", figures::cream_whips.high},
    Row{"gate-050", figures::yeast_dies.low},
    Row{"gate-051", figures::yeast_dies.high},
    Row{"gate-052", figures::yeast_wakes.low},
    Row{"gate-053", figures::yeast_wakes.high},
    Row{"gate-054", figures::starch_maize.low},
    Row{"gate-055", figures::starch_maize.high},
    Row{"gate-056", figures::starch_potato.low},
    Row{"gate-057", figures::starch_potato.high},
    Row{"gate-058", figures::starch_tapioca.low},
    Row{"gate-059", figures::starch_tapioca.high},
    Row{"gate-060", figures::sugar_caramel.low},
    Row{"gate-061", figures::sugar_caramel.high},
    Row{"gate-062", figures::browns_fast.low},
    Row{"gate-063", figures::frying_starchy.high},
    Row{"gate-064", figures::beef_rare.low},
    Row{"gate-065", figures::beef_rare.high},
    Row{"gate-066", figures::beef_medium_rare.low},
    Row{"gate-067", figures::beef_medium_rare.high},
    Row{"gate-068", figures::beef_well_done.low},
    Row{"gate-069", figures::beef_well_done.high},
    Row{"gate-070", figures::fridge.low},
    Row{"gate-071", figures::fridge.high},
    Row{"gate-072", figures::bread_core.low},
    Row{"gate-073", figures::bread_core.high},
    Row{"gate-074", figures::cake_core.low},
    Row{"gate-075", figures::cake_core.high},
    Row{"gate-076", figures::swiss_meringue.low},
    Row{"gate-077", figures::swiss_meringue.high},
    Row{"gate-078", figures::italian_syrup.low},
    Row{"gate-079", figures::italian_syrup.high},
    Row{"gate-080", sea_boils + figures::jam_sets_above_boil.low},
    Row{"gate-081", figures::ices_draw.low},
    Row{"gate-082", figures::ices_draw.high},
};

}  // namespace

TEST_CASE("every gate of the reference is met by a figure of ours", "[against]") {
  const auto text = tests::shared_file("reference/trade_gates.csv");
  if (!text) return;
  std::map<std::string, double> ours;
  for (const Row& row : rows) REQUIRE(ours.emplace(row.id, row.ours).second);
  std::size_t seen = 0;
  for (auto& row : tests::read_csv(*text)) {
    CAPTURE(row["id"], row["quantity"], row["inputs"]);
    REQUIRE(ours.count(row["id"]) == 1);
    ++seen;
    CHECK(ours[row["id"]] == Approx(std::stod(row["value"])).margin(std::stod(row["tolerance"]) + 1e-4));
  }
  CHECK(seen == rows.size());
}

TEST_CASE("every figure of the trade has a source, a unit and ends in order, and its name once", "[against]") {
  std::map<std::string_view, int> names;
  for (const rules::TradeFigure& figure : rules::trade_figures()) {
    CAPTURE(figure.name);
    CHECK(++names[figure.name] == 1);
    CHECK_FALSE(figure.source.empty());
    CHECK_FALSE(figure.unit.empty());
    CHECK(figure.low <= figure.high);
  }
}
