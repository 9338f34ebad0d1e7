#ifndef CORE_RULES_HELD_ALLERGENS_H
#define CORE_RULES_HELD_ALLERGENS_H

#include <string>
#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// An allergen that is surely in the dish, by one of its foods.
struct HeldAllergens {
  food::Allergens bits = 0;
  std::string food;          ///< for a sentence: "butter", "walnuts in Sweet pastry"
  std::string specified;     ///< date of the house's specification; "" when the table's usual food is assumed
  fiche::Node where = fiche::none;  ///< the ingredient, override or component of this document
};

/// Of all ingredients that are always in it, those of components kept in other files too. Left out: optional lines, all
/// but the first of a choice, swaps, and what is not eaten (bath, boiling water, covers).
std::vector<HeldAllergens> held_allergens(const Check& check);

/// The bits an allergen list must name for what is held: gluten and wheat stand for each other where the food has both.
food::Allergens left_out(food::Allergens held, food::Allergens stated);

/// Ids of the bits, "egg milk", with this between.
std::string allergen_list(food::Allergens bits, std::string_view between);

}  // namespace tamis::rules

#endif
