#ifndef CORE_FLOW_MELTING_H
#define CORE_FLOW_MELTING_H

#include "core/food/food.h"
#include "core/food/thermal.h"

namespace tamis::flow {

/// Heat that a gram of a food takes up, at most, when all that can be solid in it at kitchen temperatures melts, in J:
/// its fat where that sets. Ice is counted apart, where the food is below 0 °C.
double melting_j(const food::Food& food, double fat_share);

constexpr double melting_of_ice_j = food::melting_heat;  ///< J a g
constexpr double most_melting_j = 157;       ///< a g of cocoa butter, stable form: the most there is among kitchen fats
constexpr double fat_is_melted_c = 37;       ///< cocoa butter is clear at 34 to 36 °C, milk fat at 37 °C (from memory)

}  // namespace tamis::flow

#endif
