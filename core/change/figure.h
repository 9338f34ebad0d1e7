#ifndef CORE_CHANGE_FIGURE_H
#define CORE_CHANGE_FIGURE_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/amount.h"
#include "core/measure/kitchen_tools.h"
#include "core/measure/read.h"

namespace tamis::change {

/// How a figure is to come out, and how strictly.
struct Target {
  measure::System units = measure::System::metric;
  const measure::KitchenTools* tools = nullptr;
  measure::Tolerance tolerance;
  bool oven = false;      ///< a temperature on an oven's dial
  bool gate = false;      ///< a condition: a range must not grow
  bool control = false;   ///< a limit of food safety: an exact figure must not move to the unsafe side
};

/// Exact change of a figure on its way: value × factor + shift, in base units. A density is a factor from g to ml or
/// back, another oven mode is a shift in °C.
struct Passage {
  measure::Kind kind = measure::Kind::mass;  ///< of what comes out
  base::Ratio factor = 1;
  base::Ratio shift = 0;
};

/// A figure as converted, and the rounding of its ends.
struct Figure {
  measure::Amount amount;
  std::vector<measure::Rounded> ends;
};

/// A figure stands in a system when all its units do: those of the system and those of nobody (grams only in metric;
/// counts, pinches and words anywhere).
bool stands_in(const measure::Amount& amount, measure::System system);

/// Nothing to convert: a count, a word, a trade measure.
bool is_unmeasured(const measure::Amount& amount);

/// The amount's ends in base units; gas marks by their table.
base::Ratio exact_low(const measure::Amount& amount);
base::Ratio exact_high(const measure::Amount& amount);

/// The figure through the passage and rounded. Form and "about" stay; a range whose ends round to the same becomes
/// exact. Empty when the arithmetic overflows.
std::optional<Figure> convert_figure(const measure::Amount& amount, const Passage& passage, const Target& target);

/// Both read from different texts: the same units and values.
bool same_figure(const measure::Amount& a, const measure::Amount& b);

/// As people write it in the language and with the decimal sign of `reading`.
std::string write_figure(const measure::Amount& amount, const measure::Reading& reading);
/// "12 × 20 in": one unit at the end where all share it.
std::string write_lengths(const std::vector<measure::Amount>& lengths, const measure::Reading& reading);
/// In g, ml, mm or °C, unrounded: words that read the same under any system.
std::string write_exactly(std::vector<measure::Amount> amounts, const measure::Reading& reading);

}  // namespace tamis::change

#endif
