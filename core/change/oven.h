#ifndef CORE_CHANGE_OVEN_H
#define CORE_CHANGE_OVEN_H

#include "core/change/work.h"

namespace tamis::change {

/// Decides which oven figures move to the wished mode, and which way, into work.oven_shifts; says so, and which stay.
void plan_oven_shifts(Work& work);

/// How much hotter a static oven is set than a fan one, in the steps of the figure's own scale: 25 °F or 20 °C, as °C.
base::Ratio between_modes(const measure::Amount& amount);

}  // namespace tamis::change

#endif
