#ifndef CORE_FORMAT_DRAFT_INGREDIENT_H
#define CORE_FORMAT_DRAFT_INGREDIENT_H

#include <vector>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Reads a line of an ingredient list. More than one where the author added two up ("50 g sugar + 30 g honey").
std::vector<DraftIngredient> read_ingredients(Desk& desk, base::Span line);

}  // namespace tamis::format::draft

#endif
