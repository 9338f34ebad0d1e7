#ifndef CORE_RULES_GELATINE_SHARE_H
#define CORE_RULES_GELATINE_SHARE_H

#include <optional>

#include "core/rules/rule.h"

namespace tamis::rules {

/// Grams of gelatine of 200 bloom in a gram of what comes of the step, each counted by its strength (square-root rule), and
/// gelatine mass by the sixth of it that is gelatine; empty where that is not known.
std::optional<flow::Range> gelatine_share(const Check& check, int step);

}  // namespace tamis::rules

#endif
