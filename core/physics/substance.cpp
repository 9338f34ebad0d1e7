#include "core/physics/substance.h"

#include <algorithm>

namespace tamis::physics {
namespace {

constexpr double coldest = -60, warmest = 260;

/// Close below the bend, where heat content goes as 1/t; ever wider from it.
std::vector<double> temperatures(double bend) {
  std::vector<double> out;
  for (double below = 0.002; bend - below > coldest; below = std::min(below * 1.12, below + 0.5)) out.push_back(bend - below);
  out.push_back(coldest);
  std::reverse(out.begin(), out.end());
  for (double above = 0; bend + above < warmest; above += 2) out.push_back(bend + above);
  out.push_back(warmest);
  return out;
}

double between(double x, double x0, double x1, double y0, double y1) { return y0 + (y1 - y0) * (x - x0) / (x1 - x0); }

template <double Substance::Knot::* Member>
std::size_t segment(const std::vector<Substance::Knot>& knots, double value, std::size_t guess) {
  std::size_t at = std::min(guess, knots.size() - 2);
  // Mostly the neighbour; a search when it is far.
  for (int tries = 0; tries < 4; ++tries) {
    if (value < knots[at].*Member && at > 0) {
      --at;
    } else if (value > knots[at + 1].*Member && at + 2 < knots.size()) {
      ++at;
    } else {
      return at;
    }
  }
  const auto after = std::upper_bound(knots.begin() + 1, knots.end() - 1, value,
                                      [](double wanted, const Substance::Knot& knot) { return wanted < knot.*Member; });
  return static_cast<std::size_t>(after - knots.begin()) - 1;
}

}  // namespace

Substance::Substance(double density, const OfCelsius& heat, const OfCelsius& conductivity, double bend)
    : density_(density), bend_(bend) {
  for (const double celsius : temperatures(bend)) {
    Knot knot{celsius, heat(celsius), conductivity(celsius), 0};
    if (!knots_.empty()) {
      const Knot& last = knots_.back();
      knot.heat = std::max(knot.heat, last.heat + 1e-6 * (celsius - last.celsius));
      knot.summed = last.summed + (celsius - last.celsius) * (last.conductivity + knot.conductivity) / 2;
    }
    knots_.push_back(knot);
  }
}

std::size_t Substance::segment_at(double celsius, std::size_t guess) const { return segment<&Knot::celsius>(knots_, celsius, guess); }
std::size_t Substance::segment_of(double heat, std::size_t guess) const { return segment<&Knot::heat>(knots_, heat, guess); }

double Substance::heat(double celsius) const {
  const std::size_t i = segment_at(celsius, knots_.size() / 2);
  return between(celsius, knots_[i].celsius, knots_[i + 1].celsius, knots_[i].heat, knots_[i + 1].heat);
}

double Substance::celsius(double heat) const {
  const std::size_t i = segment_of(heat, knots_.size() / 2);
  return between(heat, knots_[i].heat, knots_[i + 1].heat, knots_[i].celsius, knots_[i + 1].celsius);
}

double Substance::conductivity(double celsius) const {
  const std::size_t i = segment_at(celsius, knots_.size() / 2);
  return between(celsius, knots_[i].celsius, knots_[i + 1].celsius, knots_[i].conductivity, knots_[i + 1].conductivity);
}

double Substance::summed(double celsius) const {
  const std::size_t i = segment_at(celsius, knots_.size() / 2);
  return between(celsius, knots_[i].celsius, knots_[i + 1].celsius, knots_[i].summed, knots_[i + 1].summed);
}

Substance steady(const Material& material) {
  return {material.density, [&](double celsius) { return material.specific_heat * celsius; },
          [&](double) { return material.conductivity; }, coldest + 1};
}

Substance substance_of(const food::Makeup& makeup, double freezes_at, double celsius) {
  const food::Frozen frozen(makeup, freezes_at);
  return {frozen.at(celsius).density, [&](double at) { return frozen.enthalpy(at) * 1000; },
          [&](double at) { return frozen.at(at).conductivity; }, frozen.starts()};
}

}  // namespace tamis::physics
