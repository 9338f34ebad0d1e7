#ifndef CORE_FOOD_FOLD_H
#define CORE_FOOD_FOLD_H

#include <string>
#include <string_view>
#include <vector>

namespace tamis::food {

/// A written name as look_up compares it: lower case, without accents (é e, œ oe, ß ss), everything that is not a
/// letter or a digit one space. "Jaunes d’œufs" becomes "jaunes d oeufs", "35 % cream" "35 cream".
std::string fold(std::string_view name);

/// The folded word without its plural ending, roughly, for English and French alike: "berries" berry, "leaves"
/// leaf, "choux" chou. Both sides of a comparison go through it, so a wrong stem does no harm.
std::string stem(std::string_view folded_word);

/// Stems of the words that carry meaning, in order: without "of", "de", "the", "la" ... All of them where nothing
/// would be left. `out` is overwritten.
void stems(std::string_view folded, std::vector<std::string>& out);

}  // namespace tamis::food

#endif
