#ifndef CORE_FOOD_ALLERGEN_BITS_H
#define CORE_FOOD_ALLERGEN_BITS_H

#include "core/food/food.h"

/// The bits of allergens.inc by name, as the food table writes them: `gluten | wheat | milk`.
namespace tamis::food::allergen {

enum class Place : unsigned {
#define ALLERGEN(id, ...) id,
#include "core/food/allergens.inc"
#undef ALLERGEN
};

#define ALLERGEN(id, ...) inline constexpr Allergens id = 1U << static_cast<unsigned>(Place::id);
#include "core/food/allergens.inc"
#undef ALLERGEN

}  // namespace tamis::food::allergen

#endif
