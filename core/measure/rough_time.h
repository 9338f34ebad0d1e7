#ifndef CORE_MEASURE_ROUGH_TIME_H
#define CORE_MEASURE_ROUGH_TIME_H

#include <string>

#include "core/measure/kitchen_tools.h"

namespace tamis::measure {

/// A worked-out time as a kitchen says it, the coarser the longer, alike on every machine: "90 s", "12 min", "55
/// min", "1 h 45 min", "9 h", "3.5 days". Steps of 5 s below 2 min, a minute below 20 min, 5 min below 2 h, a
/// quarter of an hour below 10 h, an hour below 2 days, half a day beyond. Never 0 but for down.
std::string rough_time(double seconds, Toward toward = Toward::nearest);

/// From one to the other, each to the nearest: "55 to 75 min", "50 min to 2 h"; one time where both come to the
/// same.
std::string rough_times(double low, double high);

}  // namespace tamis::measure

#endif
