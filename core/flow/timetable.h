#ifndef CORE_FLOW_TIMETABLE_H
#define CORE_FLOW_TIMETABLE_H

#include <vector>

#include "core/fiche/fiche.h"
#include "core/flow/flow.h"
#include "core/flow/time_network.h"

namespace tamis::flow {

/// When a step is done, in seconds from the midnight before the day of service; before it negative.
struct TimetableStep {
  int step = -1;  ///< index into Flow::steps
  TimeNetwork::Seconds start = 0, end = 0;
  bool stated = false;        ///< the step says how long it takes; else it has no length here
  bool out_of_hours = false;  ///< hands are wanted when nobody is at work, and no other time would do
};

struct Timetable {
  bool fits = true;  ///< false: what the fiche says of its times cannot all be kept; there are no steps then
  std::vector<TimetableStep> steps;  ///< as they begin; those of one time in the order of the flow
};

/// The steps of a fiche laid backwards from service: each as late as order, waits, days and keeping allow, hands-on work
/// within the house's hours where that can be; what is chilled, frozen or kept begins to be as soon as it
/// can. Of a stated range the middle, of "at least" the least. Who does it is not
/// looked at: steps may go on at once. The last day that the fiche speaks of is the day of service, where its times allow.
Timetable lay_backwards(const fiche::Fiche& fiche, const Flow& flow, TimeNetwork::Seconds service);

}  // namespace tamis::flow

#endif
