#ifndef CORE_RULES_TRADE_FIGURES_H
#define CORE_RULES_TRADE_FIGURES_H

#include <span>
#include <string>
#include <string_view>

namespace tamis::rules {

/// A range that the trade works to; both ends alike for a single figure. Table: core/rules/trade_figures.inc.
struct TradeFigure {
  std::string_view name;
  double low, high;
  std::string_view unit;    ///< "°C", "% of the flour", ...
  std::string_view source;
};

/// Each by its name: figures::yeast_dies.low.
namespace figures {
#define FIGURE(name, low, high, unit, source) inline constexpr TradeFigure name{#name, low, high, unit, source};
#include "core/rules/trade_figures.inc"
}  // namespace figures

std::span<const TradeFigure> trade_figures();

/// "82–85 °C", "0.6–5 % of the water", "73 °C"; for a message.
std::string text_of(const TradeFigure& figure);

}  // namespace tamis::rules

#endif
