#include "core/food/food.h"

// Common practice, not a standard: what a batch forgives. A gel, a dough's salt, its yeast and its powder show a
// difference of a few per cent; a dough's or a custard's main parts show one of five; a garnish shows none.

namespace tamis::food {

base::Ratio tolerance_of(Role role) {
  switch (role) {
    case Role::setting:
    case Role::leavening:
    case Role::yeast:
    case Role::salt:
      return {1, 100};
    case Role::flour:
    case Role::starch:
    case Role::sugar:
    case Role::fat:
    case Role::egg:
    case Role::dairy:
    case Role::liquid:
    case Role::acid:
    case Role::chocolate:
      return {2, 100};
    case Role::nut:
    case Role::alcohol:
    case Role::fruit:
    case Role::other:
      return {5, 100};
    case Role::spice:
    case Role::vegetable:
    case Role::meat:
    case Role::fish:
    case Role::flavouring:
    case Role::garnish:
      return {10, 100};
  }
  return {5, 100};
}

}  // namespace tamis::food
