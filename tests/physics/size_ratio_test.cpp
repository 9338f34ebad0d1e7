#include "core/physics/size_ratio.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "core/physics/grid.h"

using namespace tamis::physics;

namespace {
Body slab(double depth) { return {{{Shape::slab, depth / 2}}}; }
constexpr Ends half{0.5, 0.5}, wet{0.3, 0.62}, middle{0.3, 0.8};
}  // namespace

TEST_CASE("the time goes with the depth where the surface decides, and with its square where the inside does") {
  const Ends slow = size_ratio(slab(0.03), slab(0.06), {{1e-3, 1e-3}, half, middle});
  CHECK(slow.low == Approx(2).epsilon(1e-3));
  CHECK(slow.high == Approx(2).epsilon(1e-3));
  const Ends quick = size_ratio(slab(0.03), slab(0.06), {{1e6, 1e6}, half, middle});
  CHECK(quick.low == Approx(4).epsilon(1e-3));
  CHECK(quick.high == Approx(4).epsilon(1e-3));
}

TEST_CASE("between the two it goes by the Biot number, deeper and shallower alike") {
  for (const double depth : {0.02, 0.045, 0.08}) {
    const double times = depth / 0.03;
    const Ends oven = size_ratio(slab(0.03), slab(depth), {{20, 45}, wet, middle});
    CAPTURE(depth, oven.low, oven.high);
    CHECK(oven.low < oven.high);
    CHECK(oven.low > std::min(times, times * times));
    CHECK(oven.high < std::max(times, times * times));
    const Ends back = size_ratio(slab(depth), slab(0.03), {{20, 45}, wet, middle});
    CHECK(back.low * oven.high == Approx(1));
    CHECK(back.high * oven.low == Approx(1));
  }
}

// Outside: the same by finite volumes on a grid, with a real food's density and specific heat, which fall out.
TEST_CASE("the ratio is that of two times worked out on a grid") {
  const Substance custard = steady({1050, 3600, 0.5});
  for (const double coefficient : {10.0, 30.0, 250.0}) {
    const auto time = [&](double length) {  // one face closed is a slab of twice the depth
      return *course({{{Shape::slab, length}}}, custard, coefficient, 10, 160, 82, Place::centre).seconds;
    };
    const Ends here = size_ratio(slab(0.03), slab(0.05), {{coefficient, coefficient}, half, {0.52, 0.52}});
    CAPTURE(coefficient);
    CHECK(time(0.025) / time(0.015) == Approx(here.low).epsilon(0.004));
    CHECK(time(0.05) / time(0.03) == Approx(here.high).epsilon(0.004));
  }
}

TEST_CASE(
    "a longer loaf of the same section hardly takes longer, a ball of eight times the mass up to four times as "
    "long") {
  const Body loaf{{{Shape::slab, 0.04}, {Shape::slab, 0.05}, {Shape::slab, 0.125}}};
  const Body longer{{{Shape::slab, 0.04}, {Shape::slab, 0.05}, {Shape::slab, 0.15}}};
  const Ends same = size_ratio(loaf, longer, {{20, 1e6}, wet, middle});
  CHECK(same.low >= 1);
  CHECK(same.high < 1.05);
  const Ends ball =
      size_ratio({{{Shape::sphere, 0.04}}}, {{{Shape::sphere, 0.08}}}, {any_coefficient, wet, middle});
  CHECK(ball.low == Approx(2).epsilon(1e-3));
  CHECK(ball.high == Approx(4).epsilon(1e-3));
}

TEST_CASE("freezing goes by Plank: half by the surface, half by the ice where h d = 4 k") {
  const double k = 1.5, coefficient = 4 * k / 0.04;  // P d / h = R d² / k
  const Ends here = freezing_ratio(slab(0.04), slab(0.08), {{coefficient, coefficient}, {k, k}, {}});
  CHECK(here.low == Approx((2 + 4) / 2.0).epsilon(1e-3));
  CHECK(here.high == Approx((2 + 2 * 4) / 3.0).epsilon(1e-3));  // one face: twice the depth
}
