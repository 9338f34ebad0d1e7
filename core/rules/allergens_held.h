#ifndef CORE_RULES_ALLERGENS_HELD_H
#define CORE_RULES_ALLERGENS_HELD_H

#include <vector>

#include "core/rules/rule.h"
#include "core/tally/allergens.h"

namespace tamis::rules {

/// tally::allergen_lines of the fiche, worked out once for all rules that ask.
const std::vector<tally::AllergenLine>& allergens_held(const Check& check);

}  // namespace tamis::rules

#endif
