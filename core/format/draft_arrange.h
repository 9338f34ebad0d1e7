#ifndef CORE_FORMAT_DRAFT_ARRANGE_H
#define CORE_FORMAT_DRAFT_ARRANGE_H

#include <vector>

#include "core/format/draft_lines.h"
#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Says what each line is within the recipe, from its neighbours, and puts it in its place. Ingredient and yield lines
/// are read on the way; steps are left as text. A line that finds no place becomes a note, with a question.
Recipe arrange(Desk& desk, const std::vector<Line>& lines);

}  // namespace tamis::format::draft

#endif
