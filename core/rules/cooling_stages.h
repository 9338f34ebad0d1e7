#ifndef CORE_RULES_COOLING_STAGES_H
#define CORE_RULES_COOLING_STAGES_H

#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// So cold, so long after it began to cool: one of "to 21 °C within 2 h and to 5 °C within 4 h more".
struct CoolingStage {
  const fiche::Statement* heat = nullptr;
  const fiche::Statement* time = nullptr;
  double celsius = 0;  ///< the warmest that it allows
  double seconds = 0;  ///< the longest; those of the stages before it in it, where it says so
};

/// What a step's own sentence, or a control in it (`in`), says of how fast food cools: times by which it must be
/// done, each with the temperature before it, or the next behind it. In a control every time is such a limit.
std::vector<CoolingStage> cooling_stages(const Check& check, fiche::Node in);

}  // namespace tamis::rules

#endif
