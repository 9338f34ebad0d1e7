#include "core/physics/lethality.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <set>
#include <string>
#include <vector>

using namespace tamis::physics;

namespace {

const HeatResistance simple{"simple", "x", "in x", 60, 60, 5, 55, 70, 6, "", ""};
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

}  // namespace

TEST_CASE("a minute of D at its temperature is one tenfold reduction, and ten at z above") {
  const std::vector<CorePoint> held{{0, 60}, {60, 60}};
  CHECK(log_reductions(simple, held) == Approx(1));
  CHECK(equivalent_seconds(simple, held) == Approx(60));
  const std::vector<CorePoint> hotter{{0, 65}, {60, 65}};
  CHECK(log_reductions(simple, hotter) == Approx(10));
  CHECK(seconds_for(simple, 65, 10) == Approx(60));
}

TEST_CASE("a ramp counts as its integral does, whichever way it goes") {
  // Rising 5 K in a minute: from 1 to 10 a minute, mean (10 − 1) / ln 10.
  const std::vector<CorePoint> up{{0, 60}, {60, 65}};
  const std::vector<CorePoint> down{{0, 65}, {60, 60}};
  CHECK(log_reductions(simple, up) == Approx(9 / std::log(10.0)));
  CHECK(log_reductions(simple, down) == Approx(9 / std::log(10.0)));
}

TEST_CASE("nothing counts below what the source covers, and no more above than at its end") {
  const std::vector<CorePoint> cool{{0, 54.9}, {6000, 54.9}};
  CHECK(log_reductions(simple, cool) == 0);
  CHECK(std::isinf(seconds_for(simple, 54.9, 1)));
  const std::vector<CorePoint> hot{{0, 95}, {60, 95}};
  CHECK(log_reductions(simple, hot) == Approx(100));
  // Through both ends: 15 K of the 60 K count as a ramp, 25 K as at 70 °C.
  const std::vector<CorePoint> through{{0, 35}, {60, 95}};
  const double ramp = 15 / 60.0 * (100 - 0.1) / std::log(1000.0);
  CHECK(log_reductions(simple, through) == Approx(ramp + 25 / 60.0 * 100));
}

TEST_CASE("nothing counts across a gap") {
  const std::vector<CorePoint> gap{{0, 60}, {60, 60}, {61, unknown}, {3600, 60}, {3660, 60}};
  CHECK(log_reductions(simple, gap) == Approx(2));
}

TEST_CASE("a curve cut into more pieces counts the same, and says when it was reached") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> celsius(40, 90), share(0.1, 0.9);
  for (int round = 0; round < 200; ++round) {
    std::vector<CorePoint> curve, finer;
    for (int i = 0; i < 12; ++i) {
      const CorePoint next{60.0 * i, celsius(random)};
      if (i > 0) {
        const double cut = share(random);
        const CorePoint& last = curve.back();
        finer.push_back({last.seconds + cut * 60, last.celsius + cut * (next.celsius - last.celsius)});
      }
      curve.push_back(next);
      finer.push_back(next);
    }
    for (const HeatResistance& one : heat_resistances()) {
      CAPTURE(one.id, round);
      const double logs = log_reductions(one, curve);
      CHECK(log_reductions(one, finer) == Approx(logs));
      if (logs <= 0) continue;
      const double when = when_reached(one, curve, logs / 2);
      std::vector<CorePoint> until;
      for (const CorePoint& point : curve) {
        if (point.seconds < when) until.push_back(point);
      }
      const CorePoint& next = curve[until.size()];
      const double part = (when - until.back().seconds) / (next.seconds - until.back().seconds);
      until.push_back({when, until.back().celsius + part * (next.celsius - until.back().celsius)});
      CHECK(log_reductions(one, until) == Approx(logs / 2));
      CHECK(std::isnan(when_reached(one, curve, logs * 1.01)));
    }
  }
}

TEST_CASE("every line of heat resistance can be worked with and has its source") {
  std::set<std::string_view> ids;
  for (const HeatResistance& one : heat_resistances()) {
    CAPTURE(one.id);
    CHECK(ids.insert(one.id).second);
    CHECK(heat_resistance_named(one.id) == &one);
    CHECK_FALSE(one.source.empty());
    CHECK((one.d_seconds > 0 && one.z > 3 && one.z < 12));
    CHECK((one.from < one.to && one.from <= one.celsius && one.celsius <= one.to));
    CHECK(std::isnan(one.asked) == one.asked_by.empty());
  }
  CHECK(heat_resistance_named("nobody") == nullptr);
}
