#include <algorithm>
#include <cmath>
#include <vector>

#include "core/cli/json_text.h"
#include "core/cli/predicted.h"
#include "core/record/resistances.h"

namespace tamis::cli {
namespace {

constexpr double heat = 54;  // °C: below it no germ is counted
constexpr double many = 20;  // log10: beyond it a figure says no more

/// Its course until it is there.
std::vector<physics::CorePoint> course_of(const physics::Prediction::Case& one) {
  std::vector<physics::CorePoint> out;
  for (const auto& [seconds, celsius] : one.points) {
    if (one.seconds && seconds > *one.seconds) break;
    out.push_back({seconds, celsius});
  }
  return out;
}

/// Low, likely and high of a figure of each course, in their order.
template <class Figure>
physics::Range range_of(const physics::Prediction& answer, const Figure& figure) {
  const physics::Range out{figure(course_of(answer.low)), figure(course_of(answer.likely)), figure(course_of(answer.high))};
  return {std::min({out.low, out.likely, out.high}), out.likely, std::max({out.low, out.likely, out.high})};
}

std::string tenths(double value) {
  const auto whole = std::llround(value * 10);
  return std::to_string(whole / 10) + (whole % 10 == 0 ? "" : "." + std::to_string(whole % 10));
}

}  // namespace

std::vector<PredictedKill> kills_of(const Predicted& predicted) {
  const Question& q = predicted.question;
  const physics::Prediction& answer = predicted.answer;
  std::vector<PredictedKill> out;
  const bool asked =
      q.what == Question::What::heat && q.to >= heat && !q.kind.empty() && (q.stirred || q.place == physics::Place::centre);
  if (!asked || !answer.low.seconds || !answer.likely.seconds || !answer.high.seconds) return out;
  for (const physics::HeatResistance* of : record::resistances_in({{q.kind, q.role}}, false)) {
    PredictedKill kill;
    kill.of = of;
    kill.logs = range_of(answer, [of](const auto& course) { return physics::log_reductions(*of, course); });
    if (kill.logs.low >= of->asked)
      kill.reached = range_of(answer, [of](const auto& course) { return physics::when_reached(*of, course, of->asked); });
    kill.hold = std::isnan(of->asked) ? of->asked : std::max(of->asked - kill.logs.low, 0.0) / physics::lethal_rate(*of, q.to);
    out.push_back(kill);
  }
  return out;
}

std::string kill_said(const PredictedKill& kill, double to) {
  std::string out = std::string(kill.of->organism) + " " + std::string(kill.of->food) + ": ";
  const std::string low = tenths(kill.logs.low), high = tenths(kill.logs.high);
  const std::string range = low == high ? low : low + " to " + high;
  if (std::isnan(kill.hold))
    return out + (kill.logs.low > many ? "more than " + tenths(many) : range) + " log10 reductions by then.";
  const std::string asked = tenths(kill.of->asked) + " log10 reductions asked (" + std::string(kill.of->asked_by) + ")";
  if (kill.reached)
    return out + asked + ", reached after " + time_said(kill.reached->low, true) + " to " + time_said(kill.reached->high) + ".";
  return out + asked + "; " + range + " by then, the rest when it is held at " + celsius_said(to) + " for another " +
         time_said(kill.hold) + ".";
}

std::string kills_json(const Predicted& predicted) {
  std::string out;
  JsonList list(out, '[', ']');
  const auto figure = [](double value) { return std::isfinite(value) ? json_number(std::round(value * 100) / 100) : "null"; };
  for (const PredictedKill& kill : kills_of(predicted)) {
    list.begin();
    JsonList object(out, '{', '}');
    object.text("organism", kill.of->organism);
    object.text("food", kill.of->food);
    object.begin("log10");
    JsonList range(out, '{', '}');
    range.member("low", figure(kill.logs.low));
    range.member("likely", figure(kill.logs.likely));
    range.member("high", figure(kill.logs.high));
    range.close();
    object.member("asked", figure(kill.of->asked));
    object.member("hold", std::isfinite(kill.hold) ? json_number(std::ceil(kill.hold)) : "null");
    object.text("asked_by", kill.of->asked_by);
    object.text("source", kill.of->source);
    object.close();
  }
  list.close();
  return out;
}

}  // namespace tamis::cli
