#ifndef CORE_FORMAT_DRAFT_TIMES_H
#define CORE_FORMAT_DRAFT_TIMES_H

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Fills a step's hands-on and unattended time where the sentence says it plainly: "knead 8 min", "rest for 2 h", "chill
/// overnight". Plainly means: the verb and its one time stand in one clause, and nothing beside the time says that it is
/// another ("after 10 minutes", "4 h or overnight"). A step with two times of a kind says neither.
void find_times(const Desk& desk, DraftStep& step);

}  // namespace tamis::format::draft

#endif
