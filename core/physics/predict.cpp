#include "core/physics/predict.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/physics/grid.h"
#include "core/physics/stirred.h"

namespace tamis::physics {
namespace {

Material material_at(const food::Makeup& makeup, double celsius) {
  const food::Thermal thermal = food::unfrozen(makeup, celsius);
  return {thermal.density, thermal.specific_heat * 1000, thermal.conductivity};
}

Pot pot_of(const Piece& piece, double coefficient, double celsius) {
  const food::Thermal thermal = food::unfrozen(piece.makeup, celsius);
  return {.heat_capacity = piece.volume * thermal.density * thermal.specific_heat * 1000, .area = piece.area, .coefficient = coefficient};
}

using Points = std::vector<std::pair<double, double>>;

/// The course between now and the end, at even steps.
template <class At>
Points sampled(double from, double seconds, double to, At at) {
  constexpr int steps = 100;
  Points out{{0, from}};
  for (int i = 1; i < steps; ++i) out.emplace_back(seconds * i / steps, at(seconds * i / steps));
  out.emplace_back(seconds, to);
  return out;
}

class Predicting {
 public:
  Predicting(const Piece& piece, double from, double to, Place place) : piece_(piece), from_(from), to_(to), place_(place) {}

  /// Where it is never reached, the points run to near where it levels off.
  Prediction::Case run(double medium, double coefficient, double moving) const {
    Prediction::Case out = reach(medium, coefficient, moving);
    if (out.seconds) return out;
    Predicting nearly = *this;
    nearly.to_ = medium + 0.03 * (from_ - medium);
    out.points = nearly.reach(medium, coefficient, 0).points;
    return out;
  }

 private:
  [[nodiscard]] Prediction::Case reach(double medium, double coefficient, double moving) const {
    Prediction::Case out{medium, coefficient, std::nullopt, {}};
    if (piece_.stirred) {
      stirred(out, moving);
    } else if (piece_.body.parts.size() > 2 && !ice(medium)) {
      series(out);
    } else {
      const Grid grid{0, piece_.body.parts.size() > 2 ? 0.02 : 0.01};
      const Course gone = course(piece_.body, substance_of(piece_.makeup, piece_.freezes_at, std::max({from_, to_, 0.0})), coefficient, from_, medium, to_, place_, grid);
      out.seconds = gone.seconds;
      out.points = gone.points;
    }
    return out;
  }

  [[nodiscard]] bool ice(double medium) const { return std::min({from_, to_, medium}) < piece_.freezes_at; }

  void stirred(Prediction::Case& out, double moving) const {
    Pot pot = pot_of(piece_, out.coefficient, (from_ + to_) / 2);
    if (moving > 0) {
      pot.open_area = piece_.open_area;
      pot.moving = moving;
      out.points = open_pot(pot, from_, out.medium, to_);
      if (!out.points.empty()) out.seconds = out.points.back().first;
      return;
    }
    out.seconds = stirred_time(pot, from_, out.medium, to_);
    if (!out.seconds) return;
    out.points = sampled(from_, *out.seconds, to_, [&](double t) { return stirred_celsius(pot, from_, out.medium, t); });
  }

  void series(Prediction::Case& out) const {
    const Material material = material_at(piece_.makeup, (from_ + to_) / 2);
    out.seconds = time_to(piece_.body, material, out.coefficient, (to_ - out.medium) / (from_ - out.medium), place_);
    if (!out.seconds) return;
    out.points = sampled(from_, *out.seconds, to_, [&](double t) {
      return out.medium + (from_ - out.medium) * left(piece_.body, material, out.coefficient, t, place_);
    });
  }

  const Piece& piece_;
  double from_, to_;
  Place place_;
};

/// With the liquid's own film behind the wall.
double through(double outside, double inside) { return 1 / (1 / outside + 1 / inside); }

/// The two media ends, the quicker first.
std::pair<double, double> by_speed(const Range& celsius, bool cools) {
  return cools ? std::pair(celsius.low, celsius.high) : std::pair(celsius.high, celsius.low);
}

Material scaled(Material material, double diffusivity) {
  material.density /= diffusivity;
  return material;
}

/// Coefficients as the piece meets them.
Range coefficients(const Piece& piece, const Exposure& exposure) {
  if (!piece.stirred) return exposure.coefficient;
  const Range& outside = exposure.coefficient;
  return {through(outside.low, piece.inside.low), through(outside.likely, piece.inside.likely), through(outside.high, piece.inside.high)};
}

}  // namespace

Prediction predict(const Piece& piece, const Exposure& exposure, double from, double to, Place place) {
  const Predicting predicting(piece, from, to, place);
  const auto [quick, slow] = by_speed(exposure.celsius, to < from);
  Prediction out;
  out.properties = food::unfrozen(piece.makeup, (from + to) / 2);
  const Range coefficient = coefficients(piece, exposure);
  const bool steams = piece.stirred && piece.open_area > 0 && to < from;
  out.low = predicting.run(quick, coefficient.high, steams ? exposure.moving.high : 0);
  out.likely = predicting.run(exposure.celsius.likely, coefficient.likely, 0);
  out.high = predicting.run(slow, coefficient.low, 0);
  return out;
}

std::optional<Bounds> screen(const Piece& piece, const Exposure& exposure, double from, double to, Place place) {
  if (from == to) return Bounds{0, 0};
  constexpr double properties = 1.1;
  const Range coefficient = coefficients(piece, exposure);
  const auto [quick, slow] = by_speed(exposure.celsius, to < from);
  const auto one = [&](double medium, double surface, double faster) -> std::optional<Bounds> {
    const double share = (to - medium) / (from - medium);
    if (!(share < 1)) return share >= 1 ? std::optional(Bounds{0, 0}) : std::nullopt;
    if (piece.stirred) {
      const auto seconds = stirred_time(pot_of(piece, surface, (from + to) / 2), from, medium, to);
      return seconds ? std::optional(Bounds{*seconds / faster, *seconds / faster}) : std::nullopt;
    }
    return screen_time_to(piece.body, scaled(material_at(piece.makeup, (from + to) / 2), faster), surface, share, place);
  };
  auto low = one(quick, coefficient.high, properties);
  if (!low) return std::nullopt;
  if (piece.stirred && piece.open_area > 0 && to < from) low->low /= 2;  // what steams off an open pot
  const auto high = one(slow, coefficient.low, 1 / properties);
  return Bounds{low->low, high ? high->high : std::numeric_limits<double>::infinity()};
}

Warmth warmth_after(const Piece& piece, const Exposure& exposure, double from, double seconds, Place place) {
  const Range coefficient = coefficients(piece, exposure);
  const auto at = [&](double medium, double surface) {
    const double middle = (from + medium) / 2;
    if (piece.stirred) return stirred_celsius(pot_of(piece, surface, middle), from, medium, seconds);
    return medium + (from - medium) * left(piece.body, material_at(piece.makeup, middle), surface, seconds, place);
  };
  const auto [quick, slow] = by_speed(exposure.celsius, exposure.celsius.likely < from);
  const double first = at(quick, coefficient.high), last = at(slow, coefficient.low);
  return {std::min(first, last), at(exposure.celsius.likely, coefficient.likely), std::max(first, last)};
}

}  // namespace tamis::physics
