#include <algorithm>
#include <cmath>
#include <cstdio>

#include "core/draw/steps.h"

namespace tamis::draw {
namespace {

using flow::Constituent;
using flow::Range;

constexpr std::string_view no_break = "\u00A0";

/// Three figures, as a decimal number of that language.
std::string number_text(double value, int digits, std::string_view language) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%.*f", digits, value);
  std::string out = buffer;
  const bool comma = language.starts_with("fr") || language.starts_with("de") || language.starts_with("es");
  if (comma) std::replace(out.begin(), out.end(), '.', ',');
  return out;
}

int digits_for(double value) { return value >= 99.5 || value == std::round(value) ? 0 : value >= 9.95 ? 1 : 2; }

/// One figure where both ends look the same, else both.
std::string range_text(const Range& range, int digits, std::string_view language) {
  std::string low = number_text(range.low, digits, language);
  const std::string high = number_text(range.high, digits, language);
  if (low == high) return low;
  low += range.low < 0 || range.high < 0 ? " to " : "–";
  return low + high;
}

}  // namespace

std::string grams_text(const std::optional<Range>& grams, std::string_view language) {
  if (!grams) return "not known";
  const bool kilos = grams->high >= 9999.5;
  const double unit = kilos ? 1000 : 1;
  const Range shown{grams->low / unit, grams->high / unit};
  return range_text(shown, digits_for(shown.high), language) + (kilos ? " kg" : " g");
}

std::string celsius_text(const Range& celsius) {
  const bool open_low = std::isinf(celsius.low), open_high = std::isinf(celsius.high);
  if (open_low && open_high) return "not known";
  if (open_low) return "at most " + number_text(celsius.high, 0, "en") + " °C";
  if (open_high) return "at least " + number_text(celsius.low, 0, "en") + " °C";
  const bool to_the_half =
      celsius.low == celsius.high && celsius.low != std::round(celsius.low) && 2 * celsius.low == std::round(2 * celsius.low);
  return range_text(celsius, to_the_half ? 1 : 0, "en") + " °C";
}

std::string shares_text(const flow::State& state, std::string_view language) {
  std::string out;
  for (std::size_t i = 0; i < flow::constituents; ++i) {
    const auto constituent = static_cast<Constituent>(i);
    const Range share = state.share(constituent);
    const double least = constituent == Constituent::salt || constituent == Constituent::alcohol ? 0.002 : 0.01;
    const bool wide = share.width() > std::max(0.01, share.middle());
    if (!state.knows(constituent) || share.middle() < least || wide || constituent == Constituent::ash) continue;
    const Range percent{100 * share.low, 100 * share.high};
    if (!out.empty()) out += ", ";
    out += flow::constituent_name(constituent);
    out += no_break;
    out += range_text(percent, percent.high < 9.95 ? 1 : 0, language);
    out += no_break;
    out += '%';
  }
  return out;
}

}  // namespace tamis::draw
