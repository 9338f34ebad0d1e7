#ifndef CORE_RULES_CONTENTS_H
#define CORE_RULES_CONTENTS_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// Whether what a step works on is mostly water and not mostly fat, from its ingredients up through the steps before it:
/// at least half of it water, less than a quarter fat. False where any part, its amount or its composition is not known.
bool is_watery(const Check& check, int step);

}  // namespace tamis::rules

#endif
