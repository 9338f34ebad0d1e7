#include <catch2/catch.hpp>

#include "core/physics/boiling_point.h"

using namespace tamis::physics;

TEST_CASE("the backward equation gives the check values of its release") {
  // IAPWS-IF97, table 36 (from memory).
  CHECK(boiling_point_at(0.1e6) + 273.15 == Approx(372.755919).margin(1e-6));
  CHECK(boiling_point_at(1e6) + 273.15 == Approx(453.035632).margin(1e-6));
  CHECK(boiling_point_at(10e6) + 273.15 == Approx(584.149488).margin(1e-6));
}

TEST_CASE("the air thins with the height as the standard atmosphere says") {
  // ISO 2533, table of pressures (from memory).
  CHECK(air_pressure(0) == Approx(101325));
  CHECK(air_pressure(1000) == Approx(89874.6).margin(1));
  CHECK(air_pressure(3000) == Approx(70108.5).margin(1));
}

TEST_CASE("water boils cooler the higher the kitchen stands") {
  CHECK(boiling_point(0) == Approx(99.97).margin(0.01));
  double before = boiling_point(-430);
  CHECK(before > 101);
  for (double height = 0; height <= 5000; height += 250) {
    const double here = boiling_point(height);
    CHECK(here < before);
    before = here;
  }
}

TEST_CASE("heights and pressures beyond all kitchens give the nearest end, not nonsense") {
  CHECK(boiling_point(1e9) == boiling_point(11000));
  CHECK(boiling_point(-1e9) == boiling_point(-1000));
  CHECK(boiling_point_at(0) == Approx(0.0).margin(0.01));
  CHECK(boiling_point_at(1e12) == Approx(373.946).margin(0.01));
}
