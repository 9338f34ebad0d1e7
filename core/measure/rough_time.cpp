#include "core/measure/rough_time.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tamis::measure {
namespace {

/// What a time of that length is told to, s.
double step_of(double seconds) {
  struct Told {
    double below, step;
  };
  static constexpr std::array told{Told{120, 5}, Told{20 * 60, 60}, Told{2 * 3600, 300}, Told{10 * 3600, 900},
                                   Told{48 * 3600, 3600}};
  for (const Told& one : told)
    if (seconds < one.below) return one.step;
  return 43200;
}

struct Said {
  std::string figure, unit;  ///< unit "" where the figure has several
};

Said said(double seconds, Toward toward) {
  const double step = step_of(seconds);
  const double steps = seconds / step;
  // A hair beyond a step is that step on every machine.
  const double whole_steps = toward == Toward::down ? std::floor(steps + 1e-6)
                             : toward == Toward::up ? std::ceil(steps - 1e-6)
                                                    : std::max(1.0, std::round(steps));
  const auto whole = std::llround(step * whole_steps);
  if (whole < 120) return {std::to_string(whole), " s"};
  const long long minutes = whole / 60;
  if (minutes < 100) return {std::to_string(minutes), " min"};
  if (minutes >= 48 * 60) {
    const long long halves = std::llround(static_cast<double>(whole) / 43200);
    return {std::to_string(halves / 2) + (halves % 2 == 0 ? "" : ".5"), " days"};
  }
  if (minutes % 60 == 0) return {std::to_string(minutes / 60), " h"};
  return {std::to_string(minutes / 60) + " h " + std::to_string(minutes % 60) + " min", ""};
}

}  // namespace

std::string rough_time(double seconds, Toward toward) {
  const Said one = said(seconds, toward);
  return one.figure + one.unit;
}

std::string rough_times(double low, double high) {
  const Said from = said(low, Toward::nearest), to = said(high, Toward::nearest);
  if (from.figure == to.figure && from.unit == to.unit) return from.figure + from.unit;
  return from.figure + (from.unit == to.unit ? "" : from.unit) + " to " + to.figure + to.unit;
}

}  // namespace tamis::measure
