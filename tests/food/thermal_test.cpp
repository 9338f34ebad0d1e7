#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "core/food/thermal.h"

using namespace tamis::food;

namespace {
const Makeup milk = *makeup_of(food_by_id("milk-whole")->per_100_g).makeup;
const Makeup beef = *makeup_of(food_by_id("beef-round")->per_100_g).makeup;
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
}  // namespace

TEST_CASE("a makeup comes to exactly one") {
  for (const Makeup& makeup : {milk, beef}) {
    CHECK(makeup.water + makeup.protein + makeup.fat + makeup.carbohydrate + makeup.fibre + makeup.ash + makeup.alcohol == Approx(1));
  }
}

TEST_CASE("what a composition does not report is named, and nothing is guessed for it") {
  Composition composition = food_by_id("milk-whole")->per_100_g;
  composition.fat = unknown;
  const MakeupRead read = makeup_of(composition);
  CHECK_FALSE(read.makeup);
  REQUIRE(read.missing.size() >= 1);
  CHECK(read.missing.front() == "fat");
}

TEST_CASE("alcohol not reported is none where the rest leaves no room for it, and unknown where it does") {
  Composition composition = food_by_id("milk-whole")->per_100_g;
  composition.alcohol = unknown;
  CHECK(makeup_of(composition).makeup);
  composition.water -= 10;
  CHECK_FALSE(makeup_of(composition).makeup);
}

TEST_CASE("sensible heat is the sum of the specific heats on the way") {
  for (const Constituent constituent : {Constituent::water, Constituent::fat, Constituent::ash}) {
    double sum = 0;
    for (int i = 0; i < 800; ++i) sum += 0.1 * specific_heat(constituent, 0.1 * i + 0.05);
    CHECK(sensible_heat(constituent, 80) == Approx(sum).epsilon(1e-6));
  }
}

TEST_CASE("side by side conducts more than one behind the other") {
  for (const double t : {5.0, 40.0, 90.0}) {
    CHECK(unfrozen(beef, t).conductivity > unfrozen(beef, t, Lie::perpendicular).conductivity);
    CHECK(unfrozen(beef, t).density == unfrozen(beef, t, Lie::perpendicular).density);
  }
}

TEST_CASE("milk begins to freeze near -0.5 °C") {  // −0.512 to −0.550 °C: ISO 5764, common limits, from memory
  const FreezingPoint point = freezing_point(milk);
  CHECK(point.high == Approx(-0.53).margin(0.1));  // milk sugar is a double sugar, as the high end takes all to be
  CHECK(point.low < point.likely);
  CHECK(point.likely < point.high);
}

TEST_CASE("ice forms from the freezing point downwards, and never more than there is water") {
  const Frozen frozen(beef, -1.1);
  CHECK(frozen.ice(-1.1) == 0);
  CHECK(frozen.ice(5) == 0);
  double before = 0;
  for (double t = -1.2; t > -40; t -= 0.5) {
    CHECK(frozen.ice(t) > before);
    before = frozen.ice(t);
  }
  CHECK(before < beef.water);
}

TEST_CASE("enthalpy rises without a break, and its slope is the apparent specific heat") {
  const Frozen frozen(beef, -1.1);
  CHECK(frozen.enthalpy(-1.1 - 1e-9) == Approx(frozen.enthalpy(-1.1)).margin(1e-4));
  for (const double t : {-35.0, -20.0, -5.0, -1.5, -0.5, 4.0, 60.0}) {
    const double slope = (frozen.enthalpy(t + 1e-4) - frozen.enthalpy(t - 1e-4)) / 2e-4;
    CHECK(frozen.at(t).specific_heat == Approx(slope).epsilon(1e-5));
  }
}
