#ifndef CORE_FLOW_WARM_H
#define CORE_FLOW_WARM_H

#include "core/flow/do_actions.h"
#include "core/flow/places.h"
#include "core/flow/step_says.h"

namespace tamis::flow {

/// A step as its heat is worked out.
struct Warming {
  const Doing& doing;
  const StepSays& says;
  const Places& places;
  std::string_view on;      ///< step/@on
  Bath bath;
  double pieces = 0;        ///< the share of it that is in pieces, which take time to come to the heat around them
  double seconds = 0;       ///< how long it is heated, as far as stated
  std::size_t things = 0;   ///< how many things meet in it
  int step = -1;
};

/// What the step makes of the temperature it starts from, point.celsius, and of the heat it has had.
void warm(Point& point, const Warming& warming);

/// The hottest that it gets inside while there is water in it to boil off; else what a pan can stand.
double hottest_inside(const Point& point, const Places& places);

/// What it comes to while something else is done for a few minutes: by a few degrees toward the room.
Range drifted(const Range& food, const Range& room);

/// What food comes to that stands so long in something warmer or colder: between the two, for the fiche does not say how
/// far it gets. The one place where a model of cooling would tell more.
Range toward(const Range& food, const Range& around);

}  // namespace tamis::flow

#endif
