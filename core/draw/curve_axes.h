#ifndef CORE_DRAW_CURVE_AXES_H
#define CORE_DRAW_CURVE_AXES_H

#include <string>
#include <vector>

#include "core/draw/curve.h"

namespace tamis::draw {

/// The ends of an axis and its marks with their words.
struct Axis {
  struct Tick {
    double at = 0;
    std::string words;
  };
  double from = 0, to = 1;
  std::vector<Tick> ticks;
  std::string unit;  ///< "min", "°C"
  [[nodiscard]] double share(double value) const { return (value - from) / (to - from); }
};

/// Over all that is to be seen, from 0 or the first time; in seconds to 3 min, minutes to 3 h, hours to 4 days, then
/// days. About `ticks` marks.
Axis time_axis(const Curve& curve, int ticks);
/// Over lines, band and limits, with a little room.
Axis celsius_axis(const Curve& curve, int ticks);

/// The line's height at a time, between its points; NaN outside it, in a gap, or when it has no points.
double celsius_at(const std::vector<Curve::Point>& line, double seconds);

/// Places for labels that want to stand at `wanted` (any order) and must be `apart`, between `from` and `to`: as near as
/// can be, in the same order.
std::vector<double> spread(const std::vector<double>& wanted, double apart, double from, double to);

}  // namespace tamis::draw

#endif
