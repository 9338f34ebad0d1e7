#include "core/rules/egg_limit.h"

#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr double by_sugar = 8;      // K that 0.4 times its weight of sugar lifts the setting by (common practice)
constexpr double near_setting = 3;  // K: it thickens before it sets

double low_of_share(const Check& check, int step, unsigned kinds) {
  const auto share = share_of_kinds(check, step, kinds);
  return share ? share->low : 0;
}

}  // namespace

EggLimit egg_limit_of(const Check& check, int step, unsigned egg_kinds) {
  const double eggs = low_of_share(check, step, kind::egg);
  if (low_of_share(check, step, kind::milk | kind::cream | kind::acid) >= 1.5 * eggs) {
    return {figures::custard_cooks.high, figures::custard_cooks.high, "egg in so much liquid curdles"};
  }
  const double lift = low_of_share(check, step, kind::sugar) >= 0.4 * eggs ? by_sugar - near_setting : -near_setting;
  const auto limit = [lift](const TradeFigure& sets, std::string_view said) { return EggLimit{sets.low + lift, sets.low, said}; };
  const unsigned egg = egg_kinds & kind::egg;
  if (egg == kind::white) return limit(figures::egg_white_sets, "egg white begins to set");
  return egg == kind::yolk ? limit(figures::egg_yolk_sets, "egg yolk sets") : limit(figures::whole_egg_sets, "whole egg sets");
}

}  // namespace tamis::rules
