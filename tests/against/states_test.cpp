// What is known of real recipes after each step. The figures of the table are ours: they show at once when a change lets
// more be known, or less. What can be held against a printed card is held in real_masses_test.cpp.
#include <catch2/catch.hpp>

#include <cmath>

#include "core/flow/states.h"
#include "tests/against/real_recipe.h"

using namespace tamis;

namespace {

struct Known {
  int results = 0, mass = 0, composition = 0, temperature = 0;
};

Known count_known(const tests::RealFiche& real) {
  const flow::Flow flow = flow::read_flow(real.fiche, fiche::empty_library());
  const flow::States states = flow::read_states(real.fiche, flow, fiche::empty_library());
  Known known;
  for (const flow::Thing& thing : flow.things) {
    if (thing.kind != flow::Thing::Kind::result) continue;
    const flow::State& state = states.things[static_cast<std::size_t>(&thing - flow.things.data())];
    ++known.results;
    const bool narrow = state.grams && state.grams->width() <= 0.25 * state.grams->middle();
    known.mass += narrow ? 1 : 0;
    known.composition += state.knows_shares() ? 1 : 0;
    known.temperature += state.knows_temperature() ? 1 : 0;
    for (const flow::Range& share : state.shares) {
      CHECK(share.low >= 0);
      CHECK(share.low <= share.high + 1e-9);
      CHECK(share.high <= 1);
    }
    CHECK(state.celsius.low <= state.celsius.high);
    if (state.grams) CHECK(state.grams->low <= state.grams->high);
    // What is open says why.
    if (!state.grams) CHECK_FALSE(flow::tell(state.why_grams, real.fiche, flow).empty());
    if (!state.knows_shares()) CHECK_FALSE(flow::tell(state.why_shares, real.fiche, flow).empty());
    if (!state.knows_temperature()) CHECK_FALSE(flow::tell(state.why_celsius, real.fiche, flow).empty());
  }
  return known;
}

}  // namespace

TEST_CASE("what is known of the results of real recipes, and why not where it is not", "[states]") {
  struct Row {
    const char* id;
    int results, mass, composition, temperature;
  };
  // Of so many results: mass within 25 %, water, fat and sugars within ten points, temperature within 10 °C.
  const Row rows[] = {
      {"afrs-beef-stew-l022", 4, 4, 4, 0},
      {"afrs-roast-rib-l004", 7, 2, 2, 4},
      {"afrs-vanilla-cream-pudding-j018", 7, 6, 7, 2},
      {"beeton-orange-marmalade-1566", 7, 0, 0, 1},
      {"escoffier-hollandaise-30", 6, 4, 3, 1},
      {"farmer-charlotte-russe", 7, 0, 0, 0},
      {"nist-banana-bread", 6, 5, 5, 0},
      {"usda-canning-syrups", 3, 0, 0, 3},
      {"usda-chicken-vegetable-soup-h040b", 7, 7, 2, 0},
      {"usda-minestrone-h070", 7, 3, 2, 0},
      {"usda-peach-cobbler-b18", 13, 10, 3, 0},
      {"usda-potato-salad-e09", 7, 0, 2, 3},
      {"usda-white-sauce-c07", 6, 1, 2, 1},
      {"usda-whole-grain-dinner-rolls", 8, 8, 8, 3},
  };
  for (const Row& row : rows) {
    CAPTURE(row.id);
    const auto real = tests::real_fiche(row.id);
    REQUIRE(real != nullptr);
    const Known known = count_known(*real);
    CHECK(known.results == row.results);
    CHECK(known.mass == row.mass);
    CHECK(known.composition == row.composition);
    CHECK(known.temperature == row.temperature);
  }
  CHECK(std::size(rows) == tests::real_recipes().size());
}
