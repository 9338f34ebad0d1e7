#ifndef CORE_RULES_STANDING_H
#define CORE_RULES_STANDING_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// Whether food stands in the room in the step, by where it is and what is said: it rests, cools or is held on the
/// bench or at room temperature, and nothing cold or hot is round it. False where nothing is said.
bool stands_in_the_room(const Check& check, int step);

}  // namespace tamis::rules

#endif
