#include "core/record/kills.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <vector>

#include "core/record/resistances.h"

namespace tamis::record {
namespace {

constexpr double heat = 50;        // °C: a limit above it kills
constexpr double worth_it = 0.05;  // log10: less is not told

std::vector<physics::CorePoint> curve_of(const Log& log) {
  std::vector<physics::CorePoint> out;
  for (const Reading& one : log.readings) {
    if (one.parted) out.push_back({one.seconds, std::numeric_limits<double>::quiet_NaN()});
    out.push_back({one.seconds, one.celsius});
  }
  return out;
}

bool was_heated(const Log& log) {
  const auto hottest = std::max_element(log.readings.begin(), log.readings.end(),
                                        [](const Reading& a, const Reading& b) { return a.celsius < b.celsius; });
  return hottest->celsius > log.readings.front().celsius + 1;
}

}  // namespace

std::vector<Kill> kills_of(const fiche::Fiche& fiche, const ControlPoint& point, const Log& log) {
  std::vector<Kill> out;
  if (!log.usable || point.asks.way == ControlLimit::Way::stay) return out;
  const bool asks_heat = std::any_of(point.asks.stages.begin(), point.asks.stages.end(),
                                     [](const Stage& one) { return one.least && *one.least >= heat; });
  if (!asks_heat && !was_heated(log)) return out;
  const std::vector<physics::CorePoint> curve = curve_of(log);
  std::vector<FoodKind> foods;
  for (const fiche::Ingredient& one : fiche.ingredients) {
    if (one.component == point.component && one.food != nullptr) foods.push_back({fiche.kitchen->general_id(one.food_id), one.food->role});
  }
  for (const physics::HeatResistance* of : resistances_in(foods, asks_heat)) {
    Kill kill;
    kill.of = of;
    kill.logs = physics::log_reductions(*kill.of, curve);
    kill.reached = std::isnan(kill.of->asked) ? std::numeric_limits<double>::quiet_NaN()
                                              : physics::when_reached(*kill.of, curve, kill.of->asked);
    if (kill.logs >= worth_it || asks_heat) out.push_back(kill);
  }
  return out;
}

}  // namespace tamis::record
