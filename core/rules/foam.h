#ifndef CORE_RULES_FOAM_H
#define CORE_RULES_FOAM_H

#include "core/rules/food_kinds.h"

namespace tamis::rules {

/// Words for whipped and beaten (en, fr, de, es).
bool says_whipped(std::string_view lower_text);

/// Whether what a use takes is a foam of cream or egg, nothing melted or setting in it: beaten in a step before or in this one,
/// or said to come whipped.
bool is_foam(const Check& check, const flow::Use& use, const flow::State& state);

}  // namespace tamis::rules

#endif
