#include "core/physics/lethality.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace tamis::physics {
namespace {

constexpr double no_figure = std::numeric_limits<double>::quiet_NaN();

constexpr std::array table{
#define RESISTANCE(id, organism, food, celsius, d, z, from, to, asked, by, source) \
  HeatResistance{id, organism, food, celsius, d, z, from, to, asked, by, source},
#include "core/physics/heat_resistance.inc"
};

/// Reductions along a straight piece that lies wholly within [from, to].
double within(const HeatResistance& of, double from, double to, double seconds) {
  const double first = lethal_rate(of, from);
  const double ratio = (to - from) / of.z * std::log(10.0);
  if (std::abs(ratio) < 1e-6) return first * (1 + ratio / 2) * seconds;
  return first * std::expm1(ratio) / ratio * seconds;
}

/// Reductions along a straight piece, cut where the rate begins to count and where it stops rising.
double along(const HeatResistance& of, const CorePoint& a, const CorePoint& b) {
  const double seconds = b.seconds - a.seconds;
  if (!(seconds > 0)) return 0;
  const double low = std::min(a.celsius, b.celsius);
  const double high = std::max(a.celsius, b.celsius);
  if (high < of.from) return 0;
  if (low >= of.to) return lethal_rate(of, of.to) * seconds;
  if (low == high) return lethal_rate(of, low) * seconds;
  const double a_second = (high - low) / seconds;
  const double begin = std::max(low, of.from);
  const double end = std::min(high, of.to);
  const double above = std::max(high - of.to, 0.0) / a_second;
  return within(of, begin, end, (end - begin) / a_second) + lethal_rate(of, of.to) * above;
}

bool is_known(const CorePoint& point) { return !std::isnan(point.celsius) && !std::isnan(point.seconds); }

}  // namespace

std::span<const HeatResistance> heat_resistances() { return table; }

const HeatResistance* heat_resistance_named(std::string_view id) {
  const auto found = std::find_if(table.begin(), table.end(), [id](const HeatResistance& one) { return one.id == id; });
  return found == table.end() ? nullptr : &*found;
}

double lethal_rate(const HeatResistance& of, double celsius) {
  if (!(celsius >= of.from)) return 0;
  return std::pow(10.0, (std::min(celsius, of.to) - of.celsius) / of.z) / of.d_seconds;
}

double seconds_for(const HeatResistance& of, double celsius, double logs) {
  const double rate = lethal_rate(of, celsius);
  return rate > 0 ? logs / rate : std::numeric_limits<double>::infinity();
}

double log_reductions(const HeatResistance& of, std::span<const CorePoint> curve) {
  double sum = 0;
  for (std::size_t i = 1; i < curve.size(); ++i) {
    if (is_known(curve[i - 1]) && is_known(curve[i])) sum += along(of, curve[i - 1], curve[i]);
  }
  return sum;
}

double equivalent_seconds(const HeatResistance& of, std::span<const CorePoint> curve) {
  return log_reductions(of, curve) * of.d_seconds;
}

double when_reached(const HeatResistance& of, std::span<const CorePoint> curve, double logs) {
  double sum = 0;
  for (std::size_t i = 1; i < curve.size(); ++i) {
    const CorePoint& a = curve[i - 1];
    const CorePoint& b = curve[i];
    if (!is_known(a) || !is_known(b)) continue;
    const double more = along(of, a, b);
    if (sum + more < logs) {
      sum += more;
      continue;
    }
    double low = 0, high = 1;  // the share of this piece at which it is reached
    for (int step = 0; step < 50; ++step) {
      const double middle = (low + high) / 2;
      const CorePoint there{a.seconds + middle * (b.seconds - a.seconds), a.celsius + middle * (b.celsius - a.celsius)};
      (sum + along(of, a, there) < logs ? low : high) = middle;
    }
    return a.seconds + high * (b.seconds - a.seconds);
  }
  return no_figure;
}

}  // namespace tamis::physics
