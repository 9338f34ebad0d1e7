#ifndef CORE_RULES_CIRCLE_H
#define CORE_RULES_CIRCLE_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// Whether a step names another as one it comes after.
bool says_after(const Check& check, const flow::Step& step, const flow::Step& other);

/// Whether the circle of steps rests on what the fiche says, every wait by a use or an after. Where one of them is only
/// taken as going on with the step above, the order of the card is what is wrong (used-before-made).
bool circle_is_stated(const Check& check);

}  // namespace tamis::rules

#endif
