#ifndef CORE_FORMAT_DRAFT_FOOD_H
#define CORE_FORMAT_DRAFT_FOOD_H

#include <string>
#include <string_view>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Fills an ingredient's food from `name` (its own, without "for the tin"), when exactly one food answers to it; else asks which, naming candidates.
void find_food(Desk& desk, DraftIngredient& ingredient, std::string_view name);

/// The food of exactly that name; "" when there is none, or more than one.
std::string food_named(const Desk& desk, std::string_view name);

}  // namespace tamis::format::draft

#endif
