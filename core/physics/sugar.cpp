#include "core/physics/sugar.h"

#include <algorithm>
#include <array>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <limits>
#include <utility>

#include "core/physics/boiling_point.h"

namespace tamis::physics {
namespace {

constexpr double water_mole = 18.015e-3, sucrose_mole = 342.3e-3;  // kg/mol
constexpr double gas_constant = 8.314462;

template <class F>
double root_between(F f, double low, double high) {
  const double at_low = f(low), at_high = f(high);
  if (at_low == 0) return low;
  if (at_low * at_high > 0) return std::abs(at_low) < std::abs(at_high) ? low : high;
  std::uintmax_t most = 60;
  const auto found = boost::math::tools::toms748_solve(f, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(40), most);
  return (found.first + found.second) / 2;
}

double mole_fraction(double share) {
  const double sugar = share / sucrose_mole, water = (1 - share) / water_mole;
  return sugar / (sugar + water);
}

/// Vapour pressure of water, Pa: boiling_point_at turned round.
double vapour_pressure(double celsius) {
  return std::exp(root_between([&](double log_pa) { return boiling_point_at(std::exp(log_pa)) - celsius; }, std::log(700.0), std::log(22e6)));
}

double by_activity(double share, double pressure_pa) {
  const double water = boiling_point_at(pressure_pa);
  if (share <= 0) return water;
  return root_between([&](double celsius) { return std::log(syrup_activity(share, celsius) * vapour_pressure(celsius) / pressure_pa); }, water, water + 120);
}

/// Elevations at the sea, K: the confectioners' table (Brown 1912, as reprinted since); beyond 88 % on in steps of the
/// stages of sugar (common practice: hard crack at 149 to 154 °C holds about 99 %).
double by_table(double share) {
  static constexpr std::array<std::pair<double, double>, 13> rows{{{0, 0}, {0.1, 0.2}, {0.2, 0.6}, {0.3, 1.0}, {0.4, 1.5}, {0.5, 2.0}, {0.6, 3.0}, {0.7, 6.5}, {0.74, 8.4}, {0.84, 16.3}, {0.88, 23.1}, {0.92, 31.0}, {0.99, 53.0}}};
  const auto after = std::find_if(rows.begin() + 1, rows.end() - 1, [share](const auto& row) { return share <= row.first; });
  const auto before = std::prev(after);
  return before->second + (share - before->first) / (after->first - before->first) * (after->second - before->second);
}

/// Logarithm of water's activity with one solute alone: its moles to those of the water, and Norrish's constant.
double norrish(double kg, double kg_per_mole, double constant) {
  if (kg <= 0) return 0;
  const double moles = kg / kg_per_mole, water = 1 / water_mole;
  const double solute = moles / (moles + water);
  return std::log1p(-solute) - constant * solute * solute;
}

double log_activity(const Dissolved& in) {
  // Salt: two ions, osmotic coefficient rising with the molality.
  const double molality = in.salt / 58.44e-3;
  const double osmotic = 0.916 + 0.020 * molality + 0.0066 * molality * molality;
  return norrish(in.sucrose, sucrose_mole, 6.47) + norrish(in.glucose, 180.16e-3, 2.25) + norrish(in.lactose, 342.3e-3, 10.2) +
         norrish(in.maltose, 342.3e-3, 4.54) + norrish(in.glucose_syrup, 0.45, 2.31) + norrish(in.glycerol, 92.09e-3, 1.16) +
         norrish(in.sorbitol, 182.17e-3, 1.65) + norrish(in.alcohol, 46.07e-3, 0) - 2 * osmotic * molality * water_mole;
}

}  // namespace

double syrup_density(double share) {
  static constexpr std::array b{385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890};
  const double w = std::clamp(share, 0.0, 1.0);
  double sum = 0;
  for (std::size_t i = b.size(); i-- > 0;) sum = (sum + b[i]) * w;
  return 998.2012 + sum;
}

double sugar_at_gravity(double gravity) {
  constexpr double water = 998.2012, air = 1.2;
  const double density = gravity * (water - air) + air;
  if (density <= water) return 0;
  return root_between([&](double share) { return syrup_density(share) - density; }, 0, 1);
}

double saturated_sugar(double celsius) {
  const double t = std::clamp(celsius, 0.0, 100.0);
  return (64.1835 + 0.13477 * t + 0.0005307 * t * t) / 100;
}

double log_water_coefficient(double mole_fraction, double celsius) {
  constexpr double scale = -17638, a = -1.0038, b = -0.24653;  // J/mol; Starzak and Peacock
  const double x = mole_fraction;
  return scale / (gas_constant * (celsius + 273.15)) * x * x * (1 + a * x + b * x * x);
}

double syrup_activity(double share, double celsius) {
  const double x = mole_fraction(share);
  return (1 - x) * std::exp(log_water_coefficient(x, celsius));
}

Range syrup_boils_at(double share, double pressure_pa) {
  const double sugar = std::clamp(share, 0.0, 0.99);
  const double low = by_activity(sugar, pressure_pa);
  const double high = std::max(low, boiling_point_at(pressure_pa) + by_table(sugar));
  return {low, (low + high) / 2, high};
}

double sugar_boiling_at(double celsius, double pressure_pa) {
  if (celsius <= boiling_point_at(pressure_pa)) return 0;
  return root_between([&](double share) { return syrup_boils_at(share, pressure_pa).likely - celsius; }, 0, 0.99);
}

double water_activity(const Dissolved& dissolved) { return std::exp(log_activity(dissolved)); }

double freezing_depression(const Dissolved& dissolved) {
  // Water's activity over ice, by the heat of melting (6009.5 J/mol at 0 °C) and its change with temperature (38 J/(mol K)).
  const double log_water = log_activity(dissolved);
  const auto over_ice = [](double depression) {
    constexpr double melting = 273.15, heat = 6009.5, capacity = 38.0;
    const double kelvin = melting - depression;
    return -(heat - capacity * melting) / gas_constant * (1 / kelvin - 1 / melting) - capacity / gas_constant * std::log(melting / kelvin);
  };
  return root_between([&](double depression) { return over_ice(depression) - log_water; }, 0, 60);
}

}  // namespace tamis::physics
