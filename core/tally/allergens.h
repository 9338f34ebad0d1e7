#ifndef CORE_TALLY_ALLERGENS_H
#define CORE_TALLY_ALLERGENS_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/food/food.h"

namespace tamis::tally {

/// What one line of a fiche, or of a file that it takes from, brings of the allergens.
struct AllergenLine {
  food::Allergens sure = 0;   ///< by what the food is, or by the house's specification of it
  food::Allergens usual = 0;  ///< usual in a food of that name (soy lecithin in chocolate): assumed, not sure
  food::Allergens may = 0;    ///< what the supplier does not rule out
  std::string food;           ///< for a sentence: "butter", "walnuts in Sweet pastry"
  std::string specified;      ///< date of the house's specification; "" when the table's usual food is assumed
  bool option = false;        ///< it may be left out or not taken: optional, a later line of a choice, a swap
  bool unknown = false;       ///< neither the kitchen nor the table knows the food: nothing can be said of it
  fiche::Node where = fiche::none;  ///< the ingredient, swap, override or component of the document at hand
};

/// One for each line that brings something, or of which nothing is known, in order; those of components kept in other
/// files too, as their overrides have them. What is not eaten (bath, boiling water, covers) is left out. All variants
/// count.
std::vector<AllergenLine> allergen_lines(const fiche::Document& document, const fiche::Kitchen& kitchen,
                                         fiche::Library& library);

/// What an <allergens> element says is in it, and what may have got in: by its attributes, else by the names of the law
/// in its words (English and French). Empty where it cannot be read.
struct StatedAllergens {
  food::Allergens contains = 0;
  food::Allergens may = 0;
  food::Allergens words = 0;  ///< named in its words, whatever they say of them
};
std::optional<StatedAllergens> stated_allergens(const fiche::Document& document, fiche::Node statement,
                                                std::string_view language);

/// The bits an allergen list must name for what is held: gluten and wheat stand for each other where the food has both.
food::Allergens left_out(food::Allergens held, food::Allergens stated);

/// Ids of the bits, "egg milk", with this between.
std::string allergen_list(food::Allergens bits, std::string_view between);

}  // namespace tamis::tally

#endif
