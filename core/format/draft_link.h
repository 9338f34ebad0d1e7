#ifndef CORE_FORMAT_DRAFT_LINK_H
#define CORE_FORMAT_DRAFT_LINK_H

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Gives components, ingredients and parts their ids: short, unique, the same for the same text.
void give_ids(const Desk& desk, Recipe& recipe);

/// Marks in every step the ingredients and earlier components it names, where it is sure; asks where two answer to
/// one word, and for ingredients that no step names.
void link(Desk& desk, Recipe& recipe);

}  // namespace tamis::format::draft

#endif
