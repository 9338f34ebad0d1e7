#ifndef CORE_TALLY_ALLERGEN_WORDS_H
#define CORE_TALLY_ALLERGEN_WORDS_H

#include <string>
#include <string_view>
#include <vector>

#include "core/food/food.h"

namespace tamis::tally {

enum class Law : unsigned char { eu, us };

/// The allergens that the law asks for, of these: of wheat, gluten in the EU and wheat in the US.
food::Allergens named_by(Law law, food::Allergens bits);

/// A stretch of text, and whether it is set apart as an allergen.
struct Run {
  std::string text;
  bool marked = false;
  friend bool operator==(const Run&, const Run&) = default;
};

/// The text with every word set apart that names one of these allergens; those that it does not name are taken out of
/// `bits` by the way. Words are found in small and capital letters, as beginnings: "hazel" is none, "hazelnuts" is one.
std::vector<Run> mark_allergens(std::string_view text, food::Allergens& bits, std::string_view language);

/// What is written for an allergen that a name does not say: the sort of it where one of `names` does ("hazelnut" for nuts,
/// "barley" for gluten), else its own name. In English, or French.
std::string word_for(food::Allergens bit, std::string_view names, std::string_view language);

/// As it stands behind "Contains:" on a US label: "tree nuts (hazelnut)"; `names` as above.
std::string us_name(food::Allergens bit, std::string_view names);

}  // namespace tamis::tally

#endif
