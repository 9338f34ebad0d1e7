#include "core/physics/grid.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

namespace tamis {
namespace {

using physics::Body;
using physics::course;
using physics::Grid;
using physics::Material;
using physics::Place;
using physics::Shape;
using physics::Substance;

const Material custard{1050, 3600, 0.5};

double by_series(const Body& body, const Material& material, double h, double share, Place place) {
  return *physics::time_to(body, material, h, share, place);
}

/// Of 80 °C in a medium of 0 °C.
double by_grid(const Body& body, const Material& material, double h, double share, Place place, const Grid& grid = {}) {
  return course(body, physics::steady(material), h, 80, 0, 80 * share, place, grid).seconds.value();
}

/// Lean meat that begins to freeze at −1 °C.
const food::Makeup meat = *food::makeup_of({.water = 76, .energy_kcal = 0, .protein = 21, .fat = 2, .saturated = 0, .carbohydrate = 0,
                                            .sugars = 0, .fibre = 0, .ash = 1, .sodium_mg = 0, .alcohol = 0}).makeup;
const Substance freezing = physics::substance_of(meat, -1, 10);

TEST_CASE("with steady properties the grid is within 0.5 % of the series", "[physics]") {
  std::mt19937 random(20260);
  const auto from_to = [&random](double low, double high) {
    return low * std::pow(high / low, std::uniform_real_distribution<double>(0, 1)(random));
  };
  for (int i = 0; i < 150; ++i) {
    const Material material{from_to(300, 1300), from_to(1500, 4200), from_to(0.1, 1.5)};
    const auto shape = static_cast<Shape>(i % 3);
    const auto place = static_cast<Place>(i / 3 % 2);
    const Body body{{{shape, from_to(0.003, 0.2)}}};
    const double h = from_to(5, 1500), share = from_to(0.01, 0.8);
    CAPTURE(i, h, share, body.parts[0].length);
    CHECK(by_grid(body, material, h, share, place) == Approx(by_series(body, material, h, share, place)).epsilon(0.005));
  }
}

TEST_CASE("a surface that has begun to fall is within 0.5 % of the series", "[physics]") {
  for (const Shape shape : {Shape::slab, Shape::cylinder, Shape::sphere}) {
    for (const double h : {8.0, 30.0, 150.0}) {
      const Body body{{{shape, 0.03}}};
      CAPTURE(static_cast<int>(shape), h);
      CHECK(by_grid(body, custard, h, 0.1, Place::surface) == Approx(by_series(body, custard, h, 0.1, Place::surface)).epsilon(0.005));
    }
  }
}

TEST_CASE("bricks and short cylinders on the grid are within 0.5 % of the product of the series", "[physics]") {
  for (const Body& body : {Body{{{Shape::cylinder, 0.03}, {Shape::slab, 0.04}}}, Body{{{Shape::slab, 0.03}, {Shape::slab, 0.05}, {Shape::slab, 0.08}}}}) {
    for (const double h : {8.0, 30.0, 500.0}) {
      for (const Place place : {Place::centre, Place::mean}) {
        CAPTURE(body.parts.size(), h, static_cast<int>(place));
        CHECK(by_grid(body, custard, h, 0.1, place, {0, 0.02}) == Approx(by_series(body, custard, h, 0.1, place)).epsilon(0.005));
      }
    }
  }
}

TEST_CASE("finer cells come nearer by the square, finer steps by their length", "[physics]") {
  const Body body{{{Shape::sphere, 0.03}}};
  const double exact = by_series(body, custard, 500, 0.1, Place::mean);
  const auto off = [&](int cells, double change) { return std::abs(by_grid(body, custard, 500, 0.1, Place::mean, {cells, change}) / exact - 1); };
  CHECK(off(10, 0.0005) > 3 * off(20, 0.0005));
  CHECK(off(20, 0.0005) > 3 * off(40, 0.0005));
  CHECK(off(300, 0.08) > 1.8 * off(300, 0.04));
  CHECK(off(300, 0.04) > 1.8 * off(300, 0.02));

  const auto frozen = [&](int cells, double change) { return course(body, freezing, 30, 10, -30, -18, Place::centre, {cells, change}).seconds.value(); };
  const double finest = frozen(200, 0.001);
  CHECK(std::abs(frozen(50, 0.02) / finest - 1) < 0.004);
  CHECK(std::abs(frozen(50, 0.01) / finest - 1) < 0.002);
  CHECK(std::abs(frozen(100, 0.005) / finest - 1) < 0.001);
}

TEST_CASE("what leaves through the surface is what the body loses, within 0.1 %", "[physics]") {
  for (const Body& body : {Body{{{Shape::slab, 0.03}}}, Body{{{Shape::cylinder, 0.03}}}, Body{{{Shape::sphere, 0.03}}},
                           Body{{{Shape::slab, 0.02}, {Shape::slab, 0.05}, {Shape::slab, 0.08}}}}) {
    const auto gone = course(body, freezing, 30, 10, -30, -18, Place::mean, {0, 0.02});
    CHECK(gone.heat_out == Approx(gone.heat_lost).epsilon(1e-9));
    const double all = freezing.density() * (freezing.heat(10) - freezing.heat(-18));
    CHECK(gone.heat_lost == Approx(all).epsilon(0.01));  // a last step beyond -18 °C

    // Once more from outside: the heat that passes at the surface's own temperature, over the area.
    if (body.parts.size() > 1) continue;
    const auto surface = course(body, freezing, 30, 10, -30, -20, Place::surface, {0, 0.002});
    double out = 0;
    for (std::size_t i = 1; i < surface.points.size(); ++i) {
      const auto& [before, was] = surface.points[i - 1];
      const auto& [after, is] = surface.points[i];
      out += 30 * ((was + is) / 2 + 30) * (after - before);
    }
    const double area_to_volume = (body.parts[0].shape == Shape::slab ? 1 : body.parts[0].shape == Shape::cylinder ? 2 : 3) / body.parts[0].length;
    CHECK(out * area_to_volume == Approx(surface.heat_lost).epsilon(0.01));
  }
}

TEST_CASE("freezing and thawing tell when they never get there", "[physics]") {
  const Body body{{{Shape::slab, 0.02}}};
  CHECK_FALSE(course(body, freezing, 8, 10, -18, -18, Place::centre).seconds);
  CHECK_FALSE(course(body, freezing, 8, 10, -15, -18, Place::centre).seconds);
  CHECK(course(body, freezing, 8, 10, -15, -18, Place::centre).rests_at == -15);
  CHECK(course(body, freezing, 8, 10, -15, 12, Place::centre).seconds == 0);
  CHECK_FALSE(course(body, freezing, 8, -18, 3, 5, Place::centre).seconds);
}

TEST_CASE("thawing takes longer than freezing across the same difference, for ice carries heat better than water", "[physics]") {
  const Body body{{{Shape::slab, 0.02}}};
  const double freeze = *course(body, freezing, 500, 0, -20, -10, Place::centre).seconds;
  const double thaw = *course(body, freezing, 500, -20, 19, 0, Place::centre).seconds;
  CHECK(thaw > 1.2 * freeze);
}

TEST_CASE("a course falls all the way", "[physics]") {
  for (const Place place : {Place::centre, Place::mean, Place::surface}) {
    const auto gone = course({{{Shape::sphere, 0.03}}}, freezing, 30, 10, -30, -18, place, {50, 0.02});
    for (std::size_t i = 1; i < gone.points.size(); ++i) {
      CAPTURE(i, gone.points[i].first);
      CHECK(gone.points[i].first > gone.points[i - 1].first);
      CHECK(gone.points[i].second <= gone.points[i - 1].second + 0.3);
    }
  }
}

TEST_CASE("a substance gives back the temperature of its heat", "[physics]") {
  for (double t = -59; t < 255; t += 0.37) {
    CAPTURE(t);
    CHECK(freezing.celsius(freezing.heat(t)) == Approx(t).margin(1e-6));
  }
  CHECK(freezing.heat(20) - freezing.heat(0) == Approx(1000 * (food::Frozen(meat, -1).enthalpy(20) - food::Frozen(meat, -1).enthalpy(0))).epsilon(1e-3));
}

}  // namespace
}  // namespace tamis
