#ifndef CORE_DRAW_FOOD_CURVE_H
#define CORE_DRAW_FOOD_CURVE_H

#include "core/base/result.h"
#include "core/draw/curve.h"
#include "core/draw/steps.h"

namespace tamis::draw {

/// The temperature of the food of one component, steps.component, as its steps leave it, over the time that they state
/// (of a range the middle). Known at the end of a step, within 10 °C: the line joins two such moments of the same food. It
/// breaks at a step behind which nothing is known, at one that states no time, and where a step does not go on with the food of the
/// one before. Marks are the numbers of the steps. Refuses with why where fewer than two moments are
/// known that a line could join.
base::Result<Curve> food_curve(const Steps& steps);

}  // namespace tamis::draw

#endif
