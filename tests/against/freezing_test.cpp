// Freezing on the grid against an exact solution and against the formula of the handbooks.

#include <catch2/catch.hpp>

#include <cmath>

#include "core/physics/grid.h"
#include "core/physics/plank.h"

using namespace tamis;
using physics::Body;
using physics::Place;
using physics::Shape;
using physics::Substance;

namespace {

/// Water at its freezing point, whose surface is suddenly kept at −10 °C: Neumann's solution (Carslaw and Jaeger 1959, section 11.2).
/// Ice has come to a depth x after (x / 2λ)² / α, where √π λ exp(λ²) erf λ = c ΔT / L.
double neumann(double depth, double diffusivity, double stefan) {
  double low = 0, high = 3;
  for (int i = 0; i < 60; ++i) {
    const double at = (low + high) / 2;
    (std::sqrt(3.141592653589793) * at * std::exp(at * at) * std::erf(at) < stefan ? low : high) = at;
  }
  return std::pow(depth / (2 * low), 2) / diffusivity;
}

}  // namespace

TEST_CASE("ice grows into water as Neumann says", "[against]") {
  constexpr double k = 2.2, density = 920, capacity = 2050, latent = 334e3;
  const Substance water{density, [](double t) { return t < -0.02 ? capacity * (t + 0.02) : t > 0 ? latent + 100 * t : latent * (t + 0.02) / 0.02; },
                        [](double) { return k; }, 0};
  for (const double depth : {0.01, 0.05}) {
    CAPTURE(depth);
    const auto ours = physics::course(Body{{{Shape::slab, depth}}}, water, 1e7, 0, -10, -0.03, Place::centre, {150, 0.002});
    CHECK(*ours.seconds == Approx(neumann(depth, k / (density * capacity), capacity * 10 / latent)).epsilon(0.01));
  }
}

TEST_CASE("freezing times agree with Pham's formula", "[against]") {
  // Pham (1984, 1986), as in the ASHRAE Handbook Refrigeration, chapter "Cooling and freezing times of foods", and in food engineering textbooks;
  // from memory; said to be within 10 % of some 600 measured times. Lean beef, 74.5 % of water, of which protein binds 8.4, freezing at −1.75 °C.
  // The formula has all the rest as ice at −10 °C; by Miles 17 % of it is liquid still, so that up to 6 % more are allowed for.
  const food::Makeup beef = *food::makeup_of({.water = 74.5, .energy_kcal = 0, .protein = 21, .fat = 3.5, .saturated = 0, .carbohydrate = 0,
                                              .sugars = 0, .fibre = 0, .ash = 1, .sodium_mg = 0, .alcohol = 0}).makeup;
  const food::Frozen frozen(beef, -1.75);
  constexpr double frozen_heat = 2.1;  // kJ/(kg K)
  const Substance substance = physics::substance_of(beef, -1.75, 5);
  const auto pham = [&](Shape shape, double length, double h, double from, double medium, double to) {
    const double mean = 1.8 + 0.263 * to + 0.105 * medium;  // of freezing
    const double density = frozen.at(5).density;
    const double precooling = density * 1000 * food::unfrozen(beef, 5).specific_heat * (from - mean);
    const double freezing = density * 1000 * (food::melting_heat * (beef.water - 0.4 * beef.protein) + frozen_heat * (mean - to));
    const double first = precooling / ((from + mean) / 2 - medium), second = freezing / (mean - medium);
    const double dimensions = shape == Shape::slab ? 1 : shape == Shape::cylinder ? 2 : 3;
    return length / (dimensions * h) * (first + second) * (1 + h * length / frozen.at(-20).conductivity / 2);
  };
  for (const Shape shape : {Shape::slab, Shape::cylinder, Shape::sphere}) {
    for (const double h : {10.0, 30.0, 100.0}) {
      for (const double medium : {-20.0, -30.0, -40.0}) {
        CAPTURE(static_cast<int>(shape), h, medium);
        const auto ours = physics::course(Body{{{shape, 0.03}}}, substance, h, 5, medium, -10, Place::centre, {50, 0.01});
        CHECK(*ours.seconds == Approx(pham(shape, 0.03, h, 5, medium, -10)).epsilon(0.16));
      }
    }
  }
}

TEST_CASE("without heat beside that of the ice, bricks freeze in the time of Poisson's equation", "[against]") {
  // The temperature below freezing, summed up over the time, satisfies k ∇²w = ρ L in what is frozen, and when the last of it
  // freezes that is all of the body (Baiocchi's transformation; Crank, Free and Moving Boundary Problems, 1984, chapter 6, from memory).
  const Substance ice{1000, [](double t) { return 100 * t + 250e3 * std::clamp((t + 1.05) / 0.05, 0.0, 1.0); }, [](double) { return 1.5; }, -1};
  const auto agrees = [&](const Body& body, double h, const physics::Grid& grid) {
    CAPTURE(body.parts.size(), h);
    const auto ours = physics::course(body, ice, h, -0.99, -30, -1.1, Place::centre, grid);
    // 100 J/(kg K) over 29 K is 1.2 % more heat than the ice's.
    CHECK(*ours.seconds == Approx(1.01 * physics::plank_time(body, 1000, 250e3, 1.5, h, -1, -30)).epsilon(0.03));
  };
  for (const double h : {10.0, 100.0, 1000.0}) {
    agrees(Body{{{Shape::slab, 0.03}}}, h, {50, 0.02});
    agrees(Body{{{Shape::cylinder, 0.03}}}, h, {50, 0.02});
    agrees(Body{{{Shape::sphere, 0.03}}}, h, {50, 0.02});
    // Splitting into directions wants short steps where ice has a sharp front; foods freeze over some degrees.
    agrees(Body{{{Shape::slab, 0.03}, {Shape::slab, 0.03}}}, h, {24, 0.005});
    agrees(Body{{{Shape::cylinder, 0.03}, {Shape::slab, 0.04}}}, h, {24, 0.005});
  }
  agrees(Body{{{Shape::slab, 0.03}, {Shape::slab, 0.045}, {Shape::slab, 0.09}}}, 100, {12, 0.01});
  // A square bar and a cube with a cold face: the greatest value of the torsion function, 0.2947 and 0.2248 of the half side's square.
  const auto times_slab = [](const Body& body) {
    return physics::plank_time(Body{{{Shape::slab, 1}}}, 1, 1, 1, 1e7, 0, -1) / physics::plank_time(body, 1, 1, 1, 1e7, 0, -1);
  };
  CHECK(times_slab(Body{{{Shape::slab, 1}, {Shape::slab, 1}}}) == Approx(0.5 / 0.2947).epsilon(0.001));
  CHECK(times_slab(Body{{{Shape::slab, 1}, {Shape::slab, 1}, {Shape::slab, 1}}}) == Approx(0.5 / 0.2248).epsilon(0.002));
}
