#ifndef CORE_RECORD_RESISTANCES_H
#define CORE_RECORD_RESISTANCES_H

#include <string_view>
#include <vector>

#include "core/food/food.h"
#include "core/physics/lethality.h"

namespace tamis::record {

/// A food by the table's id, or that of the food it is like.
struct FoodKind {
  std::string_view id;
  food::Role role = food::Role::other;
};

/// The organisms that heat is asked to kill in what these foods make together. Cautious: of several that protect them the one
/// that protects most, and no food is taken for pasteurised. Cooked food that is kept or served asks for Listeria too.
std::vector<const physics::HeatResistance*> resistances_in(const std::vector<FoodKind>& foods, bool cooked);

}  // namespace tamis::record

#endif
