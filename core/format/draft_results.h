#ifndef CORE_FORMAT_DRAFT_RESULTS_H
#define CORE_FORMAT_DRAFT_RESULTS_H

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Finds the names that the author gives to what a step makes: "This is the syrup.", "Call it the base." The name ends the
/// sentence, is one or two words, names no ingredient or component, and a later step speaks of it; all else is only a
/// way of talking.
void find_results(const Desk& desk, Recipe& recipe);

}  // namespace tamis::format::draft

#endif
