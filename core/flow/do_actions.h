#ifndef CORE_FLOW_DO_ACTIONS_H
#define CORE_FLOW_DO_ACTIONS_H

#include <string_view>
#include <vector>

#include "core/flow/point.h"

namespace tamis::flow {

/// What a step does, in order: the words of its do; without a do, the verbs that open its sentences, where they are
/// words of actions.inc (English).
struct Doing {
  std::vector<const Action*> actions;
  std::string_view unknown;  ///< a word of its do that nobody knows
  bool nothing = false;      ///< neither a do nor a verb of ours
};
Doing doing_of(const fiche::Fiche& fiche, const fiche::Step& step);

/// What bounds the losses of a step that it does not state.
struct Losing {
  const Doing& doing;
  Bath bath;
  double pieces = 1;         ///< the most that can stay in a sieve, a share of it
  bool stated = false;       ///< the step says what is lost: nothing more is
  bool stays_below = false;  ///< it is heated to a figure well below the boil, where little goes off
  bool covered = false;      ///< under a lid
  std::optional<double> minutes;  ///< the longest that it is heated, where that is stated
  int step = -1;
};
/// What the actions do to mass and composition where the step does not say how much, and to the air in it.
void lose_unsaid(Point& point, const Losing& losing);

/// Whether one of its later actions puts things together ("boil mix"): then what was heated before may be only a part of it.
bool joins_after_heating(const Doing& doing);

/// Nothing is known of it any more but what foods are in it.
void forget(Point& point, Why why);

}  // namespace tamis::flow

#endif
