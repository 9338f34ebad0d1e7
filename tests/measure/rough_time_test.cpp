#include <catch2/catch.hpp>

#include "core/measure/rough_time.h"

using tamis::measure::rough_time;
using tamis::measure::rough_times;
using tamis::measure::Toward;

TEST_CASE("a worked-out time is said the coarser the longer it is") {
  CHECK(rough_time(93) == "95 s");
  CHECK(rough_time(1) == "5 s");
  CHECK(rough_time(11.6 * 60) == "12 min");
  CHECK(rough_time(33 * 60) == "35 min");
  CHECK(rough_time(98 * 60) == "1 h 40 min");
  CHECK(rough_time(128 * 60) == "2 h 15 min");
  CHECK(rough_time(9.1 * 3600) == "9 h");
  CHECK(rough_time(30.4 * 3600) == "30 h");
  CHECK(rough_time(80 * 3600) == "3.5 days");
  CHECK(rough_time(33 * 60, Toward::down) == "30 min");
  CHECK(rough_time(31 * 60, Toward::up) == "35 min");
  CHECK(rough_time(3 * 3600 + 1e-9, Toward::up) == "3 h");
}

TEST_CASE("of two times the unit is said once where it is the same") {
  CHECK(rough_times(54 * 60, 77 * 60) == "55 to 75 min");
  CHECK(rough_times(50 * 60, 120 * 60) == "50 min to 2 h");
  CHECK(rough_times(105 * 60, 150 * 60) == "1 h 45 min to 2 h 30 min");
  CHECK(rough_times(60 * 60, 61 * 60) == "60 min");
}
