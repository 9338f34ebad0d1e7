#include "core/physics/roast.h"

#include <array>
#include <catch2/catch.hpp>

#include "core/physics/grid.h"

using namespace tamis::physics;

namespace {
constexpr Material meat{1060, 3500, 0.48};
constexpr Air room{21, 8, 3};
constexpr Body::Part leg{Shape::cylinder, 0.055};  // 2.2 kg twice as long as thick

Rest roasted(double celsius, double wetness, Body::Part form = leg, double pull = 54) {
  const std::array oven{Air{celsius, 30, 20}};
  const auto out = roast_and_rest({form, meat, 10, wetness}, oven, pull, room);
  REQUIRE(out);
  return *out;
}
}  // namespace

// Outside: a dry surface below boiling is plain conduction, which the grid of grid.h does otherwise (implicit, 50
// cells).
TEST_CASE("without steam, the roast is the grid's conduction") {
  for (const Shape shape : {Shape::slab, Shape::cylinder, Shape::sphere}) {
    const Body body{{{shape, 0.04}}};
    const auto grid = course(body, steady(meat), 30, 10, 90, 54, Place::centre);
    CAPTURE(static_cast<int>(shape));
    CHECK(roasted(90, 0, {shape, 0.04}).roasted == Approx(*grid.seconds).epsilon(0.01));
  }
}

TEST_CASE("a roast loses as much in steam as roasts do, and rises as much as they rise") {
  // USDA Table of Cooking Yields for Meat and Poultry (from memory): roasts keep 75 to 85 %, drip included.
  for (const double oven : {130.0, 160.0}) {
    CHECK(roasted(oven, driest).steamed > 0.1);
    CHECK(roasted(oven, wettest).steamed < 0.2);
  }
  // Common practice: 3 to 8 K as a rule.
  CHECK(roasted(130, wettest).rise > 3);
  CHECK(roasted(130, driest).rise < 8);
  // 10 K out of a hot oven, hardly anything out of a gentle one.
  CHECK(roasted(200, wettest).rise < 10.5);
  CHECK(roasted(200, driest).rise > 9.5);
  CHECK(roasted(100, driest).rise < 4.5);
}

TEST_CASE("it rises the more the hotter the oven and the thicker the piece, and the drier its surface") {
  CHECK(roasted(100, 0.2).rise < roasted(130, 0.2).rise);
  CHECK(roasted(130, 0.2).rise < roasted(160, 0.2).rise);
  CHECK(roasted(160, 0.2, {Shape::slab, 0.02}).rise < roasted(160, 0.2, {Shape::cylinder, 0.02}).rise);
  CHECK(roasted(160, 0.3).rise < roasted(160, 0.1).rise);
  CHECK(roasted(220, 0).surface == Approx(100));
  CHECK(roasted(160, 0.2, {Shape::cylinder, 0.03}).after < roasted(160, 0.2, {Shape::cylinder, 0.06}).after);
}

TEST_CASE("stages go one after the other, and what never gets there is no roast") {
  const std::array twice{Air{160, 30, 20, 1800}, Air{160, 30, 20}};
  const auto parted = roast_and_rest({leg, meat, 10, 0.2}, twice, 54, room);
  REQUIRE(parted);
  CHECK(parted->rise == Approx(roasted(160, 0.2).rise).epsilon(0.02));
  CHECK(parted->roasted == Approx(roasted(160, 0.2).roasted).epsilon(0.01));
  const std::array cold{Air{50, 30, 20}};
  CHECK_FALSE(roast_and_rest({leg, meat, 10, 0.2}, cold, 54, room));
}
