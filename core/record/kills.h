#ifndef CORE_RECORD_KILLS_H
#define CORE_RECORD_KILLS_H

#include <vector>

#include "core/fiche/fiche.h"
#include "core/physics/lethality.h"
#include "core/record/control_limit.h"
#include "core/record/log.h"

namespace tamis::record {

/// What the recorded heat did to one organism.
struct Kill {
  const physics::HeatResistance* of = nullptr;
  double logs = 0;     ///< log10 reductions over the whole log
  double reached = 0;  ///< s: when it came to what is published; NaN when it did not, or nothing is
};

/// Of the organisms that the foods of the control point's component are known for, where the control point asks for heat or
/// the food was heated in the log. Nothing is counted across what parts the log. Cautious: of several foods of a kind the one
/// that protects most, and no food is taken for pasteurised.
std::vector<Kill> kills_of(const fiche::Fiche& fiche, const ControlPoint& point, const Log& log);

}  // namespace tamis::record

#endif
