#ifndef CORE_FORMAT_DRAFT_KEYS_H
#define CORE_FORMAT_DRAFT_KEYS_H

#include <string_view>
#include <vector>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// The phrases by which a sentence may name what goes by `name`, the whole name first.
std::vector<Key> keys_of(const Lexicon& lexicon, std::string_view name);

/// The noun that names the thing: last in English and German, first in French and Spanish; "" when none of its words does by itself.
std::string head_of(const Lexicon& lexicon, std::string_view name);

}  // namespace tamis::format::draft

#endif
