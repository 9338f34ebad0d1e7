#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "core/physics/conduction.h"

using namespace tamis::physics;

namespace {
constexpr Shape shapes[] = {Shape::slab, Shape::cylinder, Shape::sphere};
constexpr Place places[] = {Place::centre, Place::mean, Place::surface};
constexpr Material meat{1060, 3500, 0.48};

Body some_body(std::mt19937& dice) {
  std::uniform_real_distribution<double> metres(0.002, 0.15);
  switch (dice() % 5) {
    case 0: return {{{Shape::slab, metres(dice)}}};
    case 1: return {{{Shape::cylinder, metres(dice)}}};
    case 2: return {{{Shape::sphere, metres(dice)}}};
    case 3: return {{{Shape::cylinder, metres(dice)}, {Shape::slab, metres(dice)}}};
    default: return {{{Shape::slab, metres(dice)}, {Shape::slab, metres(dice)}, {Shape::slab, metres(dice)}}};
  }
}
}  // namespace

TEST_CASE("roots lie where they must, for every Biot number") {
  for (const Shape shape : shapes) {
    for (double biot = 1e-8; biot < 1e9; biot *= 3.7) {
      double before = 0;
      for (int i = 0; i < 12; ++i) {
        const Term here = term(shape, biot, i);
        CAPTURE(static_cast<int>(shape), biot, i, here.root);
        REQUIRE(here.root > before);
        if (i > 0) CHECK(here.root - before < 5.6);
        before = here.root;
      }
    }
  }
}

TEST_CASE("at the start the series comes to one") {
  for (const Shape shape : shapes) {
    for (const double biot : {0.01, 0.3, 1.0, 8.0, 300.0}) {
      CAPTURE(static_cast<int>(shape), biot);
      double mean = 0;
      for (int i = 0; i < 300; ++i) mean += term(shape, biot, i).mean;
      CHECK(mean == Approx(1).margin(4e-3));
      CHECK(left(shape, biot, 0, Place::surface) == 1);
      CHECK(left(shape, biot, 1e-4, Place::centre) == Approx(1).margin(1e-6));
    }
  }
}

TEST_CASE("a body that conducts well cools as one that is stirred") {
  // Bi towards 0: exp(−Bi Fo × surface length / volume).
  for (const Shape shape : shapes) {
    const double dimensions = shape == Shape::slab ? 1 : shape == Shape::cylinder ? 2 : 3;
    for (const Place place : places) {
      CHECK(left(shape, 1e-5, 3e4, place) == Approx(std::exp(-dimensions * 0.3)).epsilon(1e-4));
    }
  }
}

TEST_CASE("the surface is ahead of the mean, and the mean of the centre, all the time") {
  for (const Shape shape : shapes) {
    for (const double biot : {0.05, 1.0, 20.0}) {
      double before = 1;
      for (double fo = 2e-5; fo < 5; fo *= 1.6) {
        CAPTURE(static_cast<int>(shape), biot, fo);
        const double centre = left(shape, biot, fo, Place::centre);
        const double mean = left(shape, biot, fo, Place::mean);
        CHECK(left(shape, biot, fo, Place::surface) <= mean + 1e-6);
        CHECK(mean <= centre + 1e-6);
        CHECK(centre <= before + 1e-6);
        before = centre;
      }
    }
  }
}

TEST_CASE("the half-space takes over from the series without a step") {
  for (const double biot : {0.1, 5.0, 100.0}) {
    CHECK(left(Shape::slab, biot, 0.99e-4, Place::surface) == Approx(left(Shape::slab, biot, 1.01e-4, Place::surface)).epsilon(0.01));
  }
}

TEST_CASE("the heat that leaves is the heat that is gone") {
  // −d mean / d fo = dimensions × Bi × surface
  for (const Shape shape : shapes) {
    const double dimensions = shape == Shape::slab ? 1 : shape == Shape::cylinder ? 2 : 3;
    for (const double biot : {0.1, 2.0, 30.0}) {
      for (const double fo : {0.01, 0.1, 0.7}) {
        const double step = fo * 1e-4;
        const double gone = (left(shape, biot, fo - step, Place::mean) - left(shape, biot, fo + step, Place::mean)) / (2 * step);
        CHECK(gone == Approx(dimensions * biot * left(shape, biot, fo, Place::surface)).epsilon(1e-4));
      }
    }
  }
}

TEST_CASE("the time found is the time at which that much is left") {
  std::mt19937 dice(20260321);
  std::uniform_real_distribution<double> share(0.005, 0.995);
  std::uniform_real_distribution<double> power(0, 3.3);
  for (int i = 0; i < 400; ++i) {
    const Body body = some_body(dice);
    const double coefficient = std::pow(10, power(dice));
    const Place place = places[dice() % 3];
    const double wanted = share(dice);
    const auto seconds = time_to(body, meat, coefficient, wanted, place);
    REQUIRE(seconds);
    CAPTURE(i, body.parts.size(), coefficient, static_cast<int>(place), wanted, *seconds);
    CHECK(left(body, meat, coefficient, *seconds, place) == Approx(wanted).margin(2e-4));
  }
}

TEST_CASE("what is there already takes no time, and the medium's own temperature is never reached") {
  const Body body{{{Shape::slab, 0.02}}};
  CHECK(time_to(body, meat, 20, 1, Place::centre) == 0);
  CHECK(time_to(body, meat, 20, 1.3, Place::centre) == 0);
  CHECK_FALSE(time_to(body, meat, 20, 0, Place::centre));
  CHECK_FALSE(time_to(body, meat, 20, -0.1, Place::mean));
  CHECK_FALSE(time_to(body, meat, 20, NAN, Place::mean));
}

TEST_CASE("the quick look holds the time between its bounds") {
  std::mt19937 dice(20260322);
  std::uniform_real_distribution<double> share(0.005, 0.995);
  std::uniform_real_distribution<double> power(0, 3.3);
  int decided = 0;
  for (int i = 0; i < 3000; ++i) {
    const Body body = some_body(dice);
    const double coefficient = std::pow(10, power(dice));
    const Place place = places[dice() % 3];
    const double wanted = share(dice);
    const auto bounds = screen_time_to(body, meat, coefficient, wanted, place);
    const auto seconds = time_to(body, meat, coefficient, wanted, place);
    REQUIRE(bounds);
    CAPTURE(i, coefficient, static_cast<int>(place), wanted, *seconds, bounds->low, bounds->high);
    CHECK(bounds->low <= *seconds * 1.0001);
    CHECK(*seconds <= bounds->high * 1.0001);
    if (bounds->high < 1.05 * bounds->low) ++decided;
  }
  CHECK(decided > 1000);
}

TEST_CASE("half of a thick slab whose other face is tight is the slab of twice the depth") {
  const Body one_face{{{Shape::slab, 0.05}}};
  // The same heat in half the thickness from both sides takes a quarter of the time where conduction decides.
  const Body both{{{Shape::slab, 0.025}}};
  CHECK(*time_to(one_face, meat, 1e5, 0.1, Place::centre) == Approx(4 * *time_to(both, meat, 1e5, 0.1, Place::centre)).epsilon(0.01));
}
