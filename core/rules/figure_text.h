#ifndef CORE_RULES_FIGURE_TEXT_H
#define CORE_RULES_FIGURE_TEXT_H

#include <string>

#include "core/measure/unit.h"

namespace tamis::rules {

/// A worked-out figure for a message, to three digits at most and in the unit a kitchen would say it in: "28.3 g",
/// "1.25 kg", "237 ml", "25 cm", "90 min", "177 °C". `value` in base units (g, ml, mm, pieces, s, °C).
std::string figure_text(double value, measure::Kind kind);

/// "4.4 %", "37 %", "37–38 %": tenths below ten. Both in percent.
std::string percent_text(double low, double high);

/// "3 times", "1.6 times", "8 %": how far apart two figures are, the larger over the smaller.
std::string times_text(double times);

}  // namespace tamis::rules

#endif
