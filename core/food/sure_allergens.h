#ifndef CORE_FOOD_SURE_ALLERGENS_H
#define CORE_FOOD_SURE_ALLERGENS_H

#include "core/food/food.h"

namespace tamis::food {

/// Those allergens of a food of the table that it holds by what it is: milk in butter, not the soy lecithin that is
/// usual in chocolate. Where the row says "assumed", only those that its allergen_source names before ": Annex II"
/// ("milk: Annex II; soy: lecithin is usual, ...; assumed"). Sulphites never: whether the 10 mg/kg of Annex II point 12
/// are reached depends on the maker and on the dish.
Allergens sure_allergens(const Food& food);

}  // namespace tamis::food

#endif
