#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr TradeFigure all[] = {
#define FIGURE(name, low, high, unit, source) figures::name,
#include "core/rules/trade_figures.inc"
};

}  // namespace

std::span<const TradeFigure> trade_figures() { return all; }

}  // namespace tamis::rules
