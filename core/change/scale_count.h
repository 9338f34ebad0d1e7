#ifndef CORE_CHANGE_SCALE_COUNT_H
#define CORE_CHANGE_SCALE_COUNT_H

#include "core/food/food.h"
#include "core/measure/amount.h"

namespace tamis::change {

/// How a count of this food can be parted (common practice): eggs, leaves, cloves, sprigs and what is sold by the pack
/// stay whole; a vanilla pod, fruit and vegetables are halved below four; a pinch or a handful below two.
base::Ratio step_of_count(const food::Food* food, const measure::Unit& unit, base::Ratio exact);

/// The nearest count that can be done, at least one step. Eggs go up to the next whole one, unless the nearest is within
/// the food's tolerance.
base::Ratio whole_count(const food::Food* food, const measure::Unit& unit, base::Ratio exact);

/// An egg, yolk or white, which a kitchen counts or weighs.
bool is_egg(const food::Food* food);

}  // namespace tamis::change

#endif
