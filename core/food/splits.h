#ifndef CORE_FOOD_SPLITS_H
#define CORE_FOOD_SPLITS_H

#include <string_view>
#include <vector>

#include "core/food/food.h"

namespace tamis::food {

/// What a food gives when it is taken apart: yolk and white, juice and zest, fruit and its syrup.
struct Split {
  std::string_view id;  ///< of a food of the table
  double grams;         ///< from one usual piece, or from 100 g (splits_by_mass)
};
std::vector<Split> splits_of(const Food& food);  ///< empty when the table does not know
bool splits_by_mass(const Food& food);           ///< its figures are those of 100 g

}  // namespace tamis::food

#endif
