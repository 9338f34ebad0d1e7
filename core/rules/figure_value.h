#ifndef CORE_RULES_FIGURE_VALUE_H
#define CORE_RULES_FIGURE_VALUE_H

#include "core/measure/amount.h"

namespace tamis::rules {

/// The parts of a figure together, in base units (g, ml, mm, pieces, s, °C). Rules hold figures against bounds and
/// rounding, where floating point is exact enough; arithmetic that is kept stays in base::Ratio.
double value_of(const std::vector<measure::Quantity>& figure);

/// The lower and the upper end; the only figure there is for all but ranges. Not for words.
double lowest_of(const measure::Amount& amount);
double highest_of(const measure::Amount& amount);

}  // namespace tamis::rules

#endif
