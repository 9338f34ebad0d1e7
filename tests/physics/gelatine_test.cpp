#include "core/physics/gelatine.h"

#include <catch2/catch.hpp>

using namespace tamis::physics;

TEST_CASE("gelatine of twice the strength is worth the root of two, or two in a straight line") {
  CHECK(gelatine_factor(200, 100) == Approx(1.41421356));
  CHECK(gelatine_factor(200, 100, BloomRule::linear) == 2.0);
  CHECK(gelatine_factor(200, 200) == 1.0);
}

TEST_CASE("gelatine goes there and back, and by way of a third strength, by either rule") {
  const auto rule = GENERATE(BloomRule::square_root, BloomRule::linear);
  for (double from = 60; from <= 300; from += 40) {
    for (double to = 60; to <= 300; to += 40) {
      CAPTURE(from, to);
      CHECK(gelatine_factor(from, to, rule) * gelatine_factor(to, from, rule) == Approx(1));
      CHECK(gelatine_factor(from, 180, rule) * gelatine_factor(180, to, rule) == Approx(gelatine_factor(from, to, rule)));
    }
  }
}
