// Masses of real recipes, summed by hand from the weights their cards print, against the flow's.
//   AFRS L 022 00 beef stew, J 018 00 vanilla cream pudding, L 004 00 roast rib: Armed Forces Recipe Service cards (US
//   government work); 1 lb = 16 oz = 453.59237 g.
//   NIST metric cooking: banana bread; its two large eggs at the 50 g of USDA SR28 01123, 5 % either way.
#include <catch2/catch.hpp>

#include "core/flow/flow.h"
#include "tests/against/real_recipe.h"

using namespace tamis;

namespace {

constexpr double lb = 453.59237;
constexpr double oz = lb / 16;

struct Row {
  const char* id;
  double low, high;
};

}  // namespace

TEST_CASE("a real recipe weighs what its card's lines come to") {
  const Row rows[] = {
      // 30 beef, 16 3/4 water, 6 5/8 tomatoes, 8 carrots, 4 1/4 celery, 3 onions, 10 1/3 potatoes, 1 1/4 flour,
      // 3 1/8 water lb; 4 1/4 salt, 1/2 pepper, 5/8 garlic, 1/4 thyme oz. The bay leaves come out again.
      {"afrs-beef-stew-l022", (30 + 16.75 + 6.625 + 8 + 4.25 + 3 + 31.0 / 3 + 1.25 + 3.125) * lb + 5.625 * oz,
       (30 + 16.75 + 6.625 + 8 + 4.25 + 3 + 31.0 / 3 + 1.25 + 3.125) * lb + 5.625 * oz},
      // 13 3/4 oz dry milk, 15 2/3 water, 2 sugar, 1 oz salt, 1 1/8 cornstarch, 2 sugar, 5 1/4 water, 2 3/8 eggs,
      // 1 butter lb, 2 3/4 oz vanilla. A quart goes into the eggs and comes back: it changes nothing.
      {"afrs-vanilla-cream-pudding-j018", (47.0 / 3 + 2 + 1.125 + 2 + 5.25 + 2.375 + 1) * lb + 17.5 * oz,
       (47.0 / 3 + 2 + 1.125 + 2 + 5.25 + 2.375 + 1) * lb + 17.5 * oz},
      // 75 lb and 1/2 oz, of which half is served: 100 portions of 6 oz are 37.5 lb.
      {"afrs-roast-rib-l004", 37.5 * lb + 0.25 * oz, 37.5 * lb + 0.25 * oz},
      // 260 200 6 3 225 100 55 5 g and two eggs. No step takes the chocolate and the walnuts; the source leaves it open.
      {"nist-banana-bread", 854 + 95, 854 + 105},
  };
  for (const Row& row : rows) {
    CAPTURE(row.id);
    const auto real = tests::real_fiche(row.id);
    REQUIRE(real != nullptr);
    const flow::Flow flow = flow::read_flow(real->fiche, fiche::empty_library());
    REQUIRE(flow.whole.out);
    CHECK(flow.whole.out->low == Approx(row.low).epsilon(1e-6));
    CHECK(flow.whole.out->high == Approx(row.high).epsilon(1e-6));
  }
}
