#ifndef CORE_RULES_EGG_WAY_H
#define CORE_RULES_EGG_WAY_H

#include <string_view>

#include "core/rules/food_kinds.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {

/// A way of cooking egg that is stirred in a pan: custard, curd, hollandaise, sabayon.
struct EggWay {
  const TradeFigure* figure = nullptr;  ///< °C
  std::string_view name;
  std::string_view over, under;  ///< what happens beyond it; empty: nothing is said
  std::string_view way_out;
};

/// By what the step has in it. Null where starch, flour, chocolate or cheese hold the egg, or it is none of these.
const EggWay* egg_way_of(const Check& check, int step);

}  // namespace tamis::rules

#endif
