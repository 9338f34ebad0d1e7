#ifndef CORE_MEASURE_ROUNDED_H
#define CORE_MEASURE_ROUNDED_H

#include "core/measure/kitchen_tools.h"

namespace tamis::measure {

/// A rounding with its cost worked out. Only its own folder includes this.
Rounded rounded(Amount shown, base::Ratio exact, Tolerance tolerance);

/// |shown - exact| as a share of exact; 0 when exact is 0.
double share_of_error(base::Ratio shown, base::Ratio exact);

}  // namespace tamis::measure

#endif
