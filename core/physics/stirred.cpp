#include "core/physics/stirred.h"

#include <algorithm>
#include <cmath>

namespace tamis::physics {
namespace {

double vapour_pressure(double celsius) { return 611.2 * std::exp(17.62 * celsius / (243.12 + celsius)); }

double rate(const Pot& pot, double celsius, double medium, double watts) {
  const double lost = pot.coefficient * pot.area * (celsius - medium) + steaming(pot, celsius, medium);
  return (watts - lost) / pot.heat_capacity;
}

/// Runge and Kutta's fourth-order step.
double stepped(const Pot& pot, double celsius, double medium, double watts, double step) {
  const double a = rate(pot, celsius, medium, watts);
  const double b = rate(pot, celsius + a * step / 2, medium, watts);
  const double c = rate(pot, celsius + b * step / 2, medium, watts);
  const double d = rate(pot, celsius + c * step, medium, watts);
  return celsius + step / 6 * (a + 2 * b + 2 * c + d);
}

/// The course until `to`; empty when it comes to rest before.
std::vector<std::pair<double, double>> course(const Pot& pot, double from, double medium, double to, double watts) {
  constexpr double at_a_time = 0.5;  // K
  constexpr double slowest = 1e-9;   // K/s
  std::vector<std::pair<double, double>> out{{0, from}};
  const double sign = to < from ? -1 : 1;
  while ((to - out.back().second) * sign > 1e-9) {
    const auto [seconds, celsius] = out.back();
    const double speed = rate(pot, celsius, medium, watts) * sign;
    if (!(speed > slowest)) return {};
    const double way = std::min(at_a_time, (to - celsius) * sign);
    double step = way / speed;
    double next = stepped(pot, celsius, medium, watts, step);
    if ((next - celsius) * sign <= 0) return {};
    if (way < at_a_time && (to - next) * sign < 0.02 * at_a_time) next = to;  // the last step
    out.emplace_back(seconds + step, next);
    if (out.size() > 20000) return {};
  }
  return out;
}

}  // namespace

double stirred_celsius(const Pot& pot, double from, double medium, double seconds) {
  return medium + (from - medium) * std::exp(-pot.coefficient * pot.area * seconds / pot.heat_capacity);
}

std::optional<double> stirred_time(const Pot& pot, double from, double medium, double to) {
  const double share = (to - medium) / (from - medium);
  if (!(share > 0)) return std::nullopt;
  return share >= 1 ? 0 : -std::log(share) * pot.heat_capacity / (pot.coefficient * pot.area);
}

double steaming(const Pot& pot, double celsius, double medium) {
  constexpr double pascal_per_kelvin = 67;  // cp p / (0.622 L): 1006 × 101325 / (0.622 × 2.45e6)
  constexpr double humidity = 0.8;
  const double more = vapour_pressure(celsius) - humidity * vapour_pressure(std::min(medium, 100.0));
  return std::max(0.0, pot.open_area * pot.moving / pascal_per_kelvin * more);
}

std::vector<std::pair<double, double>> open_pot(const Pot& pot, double from, double medium, double to) {
  return course(pot, from, medium, to, 0);
}

std::optional<double> fire_time(const Pot& pot, double watts, double from, double medium, double to) {
  const auto way = course(pot, from, medium, to, watts);
  if (way.empty()) return std::nullopt;
  return way.back().first;
}

}  // namespace tamis::physics
