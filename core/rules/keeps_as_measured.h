#ifndef CORE_RULES_KEEPS_AS_MEASURED_H
#define CORE_RULES_KEEPS_AS_MEASURED_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// Whether a trial has measured what comes of the step as so acid (what="pH") or so dry (what="water activity") that it
/// keeps out of the cold: measured without a word of what, on it, or on all that goes into it.
bool keeps_as_measured(const Check& check, int step);

}  // namespace tamis::rules

#endif
