#ifndef CORE_FLOW_LOSSES_H
#define CORE_FLOW_LOSSES_H

#include "core/flow/work.h"

namespace tamis::flow {

/// The grams a stated share or amount of so much is; NaN when it is not known. An amount by volume: as of water, what
/// is reduced or left in a pan being mostly that. `most`: the high end of a range.
double lost_by(const fiche::Statement* said, double of, bool most);

/// What the losses that a yield of a component (or of the fiche: its root) states leave of so much. A loss that a step
/// states too is the same loss. A reduction in a step may be the loss in cooking that the yield states, or not: with
/// `most` it is, else both happen.
double after_yield_losses(const Work& work, fiche::Node owner, double mass, bool most);

}  // namespace tamis::flow

#endif
