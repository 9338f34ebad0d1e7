#include <catch2/catch.hpp>

#include <cmath>
#include <set>

#include "core/physics/media.h"
#include "core/physics/stirred.h"

using namespace tamis::physics;

namespace {
const Pot pot{.heat_capacity = 80000, .area = 0.4, .coefficient = 8};
}

TEST_CASE("a stirred pot nears its medium by the same share in the same time") {
  const double tau = pot.heat_capacity / (pot.area * pot.coefficient);
  CHECK(stirred_celsius(pot, 90, 3, tau) == Approx(3 + 87 / std::exp(1)));
  CHECK(*stirred_time(pot, 90, 3, 3 + 87 / std::exp(1)) == Approx(tau));
  CHECK(*stirred_time(pot, 4, 60, 30) == Approx(tau * std::log(56.0 / 30)));
}

TEST_CASE("no pot gets to its medium's temperature, or beyond") {
  CHECK_FALSE(stirred_time(pot, 90, 5, 5));
  CHECK_FALSE(stirred_time(pot, 90, 5, 3));
  CHECK(open_pot(pot, 90, 5, 4).empty());
}

TEST_CASE("with a lid the stepped course is the closed form") {
  const auto course = open_pot(pot, 90, 3, 5);
  REQUIRE_FALSE(course.empty());
  CHECK(course.back().first == Approx(*stirred_time(pot, 90, 3, 5)).epsilon(1e-4));
  CHECK(course.back().second == 5);
}

TEST_CASE("an open pot cools faster, most of all while it is hot") {
  Pot open = pot;
  open.open_area = 0.08;
  open.moving = 3;
  CHECK(open_pot(open, 90, 20, 60).back().first < 0.6 * *stirred_time(pot, 90, 20, 60));
  CHECK(open_pot(open, 30, 20, 25).back().first > 0.6 * *stirred_time(pot, 30, 20, 25));
  CHECK(steaming(open, 10, 60) == 0);
}

TEST_CASE("a fire heats by what it gives less what is lost") {
  // 4 l of water from 15 to 95 °C by 2 kW: 4 × 4186 × 80 / 2000 s, and a little more for what is lost.
  const Pot pan{.heat_capacity = 4 * 4186, .area = 0.15, .coefficient = 10};
  const auto seconds = fire_time(pan, 2000, 15, 20, 95);
  REQUIRE(seconds);
  CHECK(*seconds > 669.76);
  CHECK(*seconds < 710);
  CHECK_FALSE(fire_time(pan, 100, 15, 20, 95));
}

TEST_CASE("media are told apart by name, and each is in order, with a source") {
  std::set<std::string_view> ids;
  for (const Medium& medium : media()) {
    CAPTURE(medium.id);
    CHECK(ids.insert(medium.id).second);
    CHECK_FALSE(medium.source.empty());
    CHECK(medium.coefficient.low > 0);
    CHECK(medium.coefficient.low < medium.coefficient.likely);
    CHECK(medium.coefficient.likely < medium.coefficient.high);
    CHECK(medium.moving.high < medium.coefficient.high);
    if (!std::isnan(medium.celsius.likely)) {
      CHECK(medium.celsius.low <= medium.celsius.likely);
      CHECK(medium.celsius.likely <= medium.celsius.high);
    }
    CHECK(medium_named(medium.id) == &medium);
  }
  CHECK(medium_named("fridge ") == nullptr);
}
