#include "core/draw/curve_axes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <span>

namespace tamis::draw {
namespace {

constexpr double minute = 60, hour = 3600, day = 86400;

/// The smallest and the largest of what was shown to it.
struct Ends {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  void see(double value) {
    if (!std::isfinite(value)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  }
  [[nodiscard]] bool empty() const { return low > high; }
};

template <class See>
void for_each_point(const Curve& curve, See see) {
  for (const Curve::Series& series : curve.series) std::for_each(series.points.begin(), series.points.end(), see);
  if (!curve.band) return;
  std::for_each(curve.band->low.begin(), curve.band->low.end(), see);
  std::for_each(curve.band->high.begin(), curve.band->high.end(), see);
}

double step_of(double length, int ticks, std::span<const double> steps) {
  for (const double step : steps)
    if (length / step <= ticks) return step;
  double step = steps.back();
  while (length / step > ticks) step *= 2;
  return step;
}

std::string number(double value) {
  const auto tenths = std::llround(value * 10);
  std::string out = tenths < 0 ? "-" : "";
  out += std::to_string(std::llabs(tenths) / 10);
  if (tenths % 10 != 0) out += "." + std::to_string(std::llabs(tenths) % 10);
  return out;
}

void add_ticks(Axis& axis, double step, double unit) {
  for (double at = std::ceil(axis.from / step - 1e-9) * step; at <= axis.to + 1e-9 * step; at += step)
    axis.ticks.push_back({at, number(at / unit)});
}

}  // namespace

Axis time_axis(const Curve& curve, int ticks) {
  Ends ends;
  ends.see(0);
  for_each_point(curve, [&ends](const Curve::Point& point) { ends.see(point.seconds); });
  for (const Curve::Mark& mark : curve.marks) ends.see(mark.seconds);
  Axis axis;
  axis.from = ends.low;
  axis.to = std::max(ends.high, ends.low + 1);
  const double length = axis.to - axis.from;
  static constexpr std::array seconds{1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0};
  static constexpr std::array minutes{1 * minute, 2 * minute, 5 * minute, 10 * minute, 20 * minute, 30 * minute, hour};
  static constexpr std::array hours{0.5 * hour, hour, 2 * hour, 3 * hour, 4 * hour, 6 * hour, 12 * hour, day};
  static constexpr std::array days{0.5 * day, day, 2 * day, 5 * day, 10 * day};
  if (length <= 3 * minute) {
    axis.unit = "s";
    add_ticks(axis, step_of(length, ticks, seconds), 1);
  } else if (length <= 3 * hour) {
    axis.unit = "min";
    add_ticks(axis, step_of(length, ticks, minutes), minute);
  } else if (length <= 4 * day) {
    axis.unit = "h";
    add_ticks(axis, step_of(length, ticks, hours), hour);
  } else {
    axis.unit = "days";
    add_ticks(axis, step_of(length, ticks, days), day);
  }
  return axis;
}

Axis celsius_axis(const Curve& curve, int ticks) {
  Ends ends;
  for_each_point(curve, [&ends](const Curve::Point& point) { ends.see(point.celsius); });
  for (const Curve::Limit& limit : curve.limits) ends.see(limit.celsius);
  if (ends.empty()) ends = {0, 100};
  static constexpr std::array steps{0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0};
  const double room = std::max(0.5, (ends.high - ends.low) * 0.03);
  const double step = step_of(ends.high - ends.low + 2 * room, ticks, steps);
  Axis axis;
  axis.from = ends.low - room;
  axis.to = ends.high + room;
  axis.unit = "°C";
  add_ticks(axis, step, 1);
  return axis;
}

double celsius_at(const std::vector<Curve::Point>& line, double seconds) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  const auto after = std::lower_bound(line.begin(), line.end(), seconds,
                                      [](const Curve::Point& point, double at) { return point.seconds < at; });
  if (after == line.end()) return nothing;
  if (after->seconds == seconds) return after->celsius;
  if (after == line.begin()) return nothing;
  const Curve::Point& before = *std::prev(after);
  const double share = (seconds - before.seconds) / (after->seconds - before.seconds);
  return before.celsius + share * (after->celsius - before.celsius);
}

std::vector<double> spread(const std::vector<double>& wanted, double apart, double from, double to) {
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wanted[a] < wanted[b]; });
  std::vector<double> out(wanted.size());
  double least = from;
  for (const std::size_t i : order) {
    out[i] = std::max(least, wanted[i]);
    least = out[i] + apart;
  }
  double most = to;
  for (auto i = order.rbegin(); i != order.rend(); ++i) {
    out[*i] = std::min(most, out[*i]);
    most = out[*i] - apart;
  }
  return out;
}

}  // namespace tamis::draw
