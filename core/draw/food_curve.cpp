#include "core/draw/food_curve.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/flow/stated_time.h"

namespace tamis::draw {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

/// Seconds that a step states; NaN where it states none, or no end.
double seconds_of(const flow::StepLength& length) {
  if (!length.stated || !length.whole.most) return unknown;
  return static_cast<double>(length.whole.least + *length.whole.most) / 2;
}

bool known(const Curve::Point& point) { return !std::isnan(point.celsius); }

/// Whether two known moments stand beside each other, with time between them.
bool joins(const std::vector<Curve::Point>& points) {
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (known(points[i - 1]) && known(points[i]) && points[i].seconds > points[i - 1].seconds) return true;
  }
  return false;
}

/// It takes what the step before made: the same food, further on.
bool goes_on(const Steps& steps, const flow::Step& step, int before) {
  return std::any_of(step.takes.begin(), step.takes.end(),
                     [&](int use) { return steps.thing(steps.use(use).thing).maker == before; });
}

base::Finding refusal(std::string message) {
  base::Finding finding;
  finding.rule = "no-curve";
  finding.message = std::move(message);
  return finding;
}

}  // namespace

base::Result<Curve> food_curve(const Steps& steps) {
  const auto components = steps.components();
  if (components.size() != 1) return refusal("a curve is of one component");
  Curve curve;
  if (components.front() != fiche::none) curve.title = steps.fiche.document->get(components.front(), fiche::At::title);
  curve.series.emplace_back();
  std::vector<Curve::Point>& points = curve.series.front().points;
  double now = 0;
  int before = -1;
  for (const auto& [number, step] : steps.steps_of(components.front())) {
    if (step->aside) continue;
    if (before >= 0 && !goes_on(steps, *step, before)) points.push_back({now, unknown});
    before = step->index;
    const double seconds = seconds_of(flow::read_length(steps.fiche, step->node));
    if (std::isnan(seconds)) {
      points.push_back({now, unknown});
    } else {
      now += seconds;
    }
    const flow::State& state = steps.states.steps[static_cast<std::size_t>(step->index)];
    const bool tells = state.knows_temperature() && std::isfinite(state.celsius.low);
    points.push_back({now, tells ? state.celsius.middle() : unknown});
    if (tells) curve.marks.push_back({now, std::to_string(number)});
  }
  if (!joins(points)) return refusal("the temperature of the food is not known at two moments that stated times join");
  return curve;
}

}  // namespace tamis::draw
