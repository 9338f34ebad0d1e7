#ifndef CORE_RULES_FOLDING_H
#define CORE_RULES_FOLDING_H

#include <optional>
#include <string>
#include <string_view>

#include "core/rules/food_kinds.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {

/// What a base that foam is folded into may hold, for it to have a window.
constexpr unsigned folded_into = kind::chocolate | kind::any_gelatine | kind::thickener;

/// Between which temperatures a base takes a foam, in °C, and what happens beyond.
struct FoldingWindow {
  double low, high;  ///< beyond these it is said
  const TradeFigure& usual;
  std::string said;  ///< "a chocolate base is folded at 35–45 °C"
  std::string_view cold, hot;
};

/// By what the base holds and what the foam is of. Empty where it has none: hardly any chocolate, a soufflé's base, a sauce.
std::optional<FoldingWindow> folding_window(const Check& check, int step, unsigned base_kinds, unsigned foam_kinds);

}  // namespace tamis::rules

#endif
