#ifndef CORE_RULES_HEAT_TARGETS_H
#define CORE_RULES_HEAT_TARGETS_H

#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// What the food of a step is to come to, and by when where that is said beside it.
struct HeatTarget {
  const fiche::Statement* said = nullptr;
  double seconds = 0;
  bool core = false;  ///< of its core
};

/// The last figure that the step's sentence gives of the food, and those of its gates and control points, of what
/// it makes; of the surface none.
std::vector<HeatTarget> heat_targets(const Check& check, int step);

/// What those that take it next ask of it: use/@at.
std::vector<HeatTarget> targets_of_takers(const Check& check, int step);

}  // namespace tamis::rules

#endif
