#include "core/rules/trade_figures.h"

#include <cmath>
#include <string>

namespace tamis::rules {
namespace {

constexpr TradeFigure all[] = {
#define FIGURE(name, low, high, unit, source) figures::name,
#include "core/rules/trade_figures.inc"
};

/// To a tenth, without a nought behind it.
std::string plain(double value) {
  const auto tenths = std::lround(std::fabs(value) * 10);
  std::string out = value < 0 && tenths != 0 ? "−" : "";
  out += std::to_string(tenths / 10);
  if (tenths % 10 != 0) out += "." + std::to_string(tenths % 10);
  return out;
}

}  // namespace

std::span<const TradeFigure> trade_figures() { return all; }

std::string text_of(const TradeFigure& figure) {
  const std::string ends = figure.low == figure.high ? plain(figure.low) : plain(figure.low) + "–" + plain(figure.high);
  return ends + " " + std::string(figure.unit);
}

}  // namespace tamis::rules
