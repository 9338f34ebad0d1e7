#ifndef CORE_FLOW_STEP_TIMES_H
#define CORE_FLOW_STEP_TIMES_H

#include <optional>
#include <string_view>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/flow/flow.h"
#include "core/flow/stated_time.h"
#include "core/flow/time_network.h"

namespace tamis::flow {

/// The hours in which work starts, in seconds from the midnight before.
struct WorkingHours {
  TimeNetwork::Seconds from = 5 * 3600;
  TimeNetwork::Seconds until = 23 * 3600;
};
/// From the first person's start to the last one's end; with a night shift, or without people, the usual hours.
WorkingHours working_hours(const fiche::Kitchen& kitchen);
/// Whether some of these actions goes on with nobody at it: chill, freeze, rest, proof ...
bool goes_on_by_itself(const std::vector<std::string_view>& actions);
/// "19:00" in seconds from midnight; empty when it is no time of day.
std::optional<TimeNetwork::Seconds> clock_time(std::string_view text);

/// What states a constraint of the steps' time network.
struct TimeReason {
  enum class Kind : unsigned char {
    length,  ///< a step from its start to its end
    order,   ///< a step starts when another has ended, because it takes what that one makes
    wait,    ///< at-least and at-most of a step that comes after another
    within,  ///< a limit in the sentence: "within 10 min" of what was made before
    day,     ///< the day a step, or its component, is done on
    night,   ///< "overnight": not over before the next morning
    keep,    ///< what is kept is used before it is past
  } kind = Kind::length;
  fiche::Node node = fiche::none;  ///< the element that states it; of an order the step that waits
  int step = -1;                   ///< index into Flow::steps: the step, the later one of two
  int other = -1;                  ///< the earlier one of two, else -1
};

/// When the steps of a fiche can be done, as a simple temporal network: an event for the midnight before day 1, and one
/// for the start and the end of each step.
///
/// Nothing is assumed that a cook would not: waiting is always allowed, steps without order between them may go on at
/// once, and a step that is left out by some (optional, when, branch, another batch) may take no time. A day of work
/// is what the kitchen's people work, else from 05:00 to 23:00 (common practice). A component's day is that on which
/// its work begins: it binds the steps until more than six hours have gone by. A step on a known day that states no
/// time, and is no resting, chilling or the like, is over with that day.
struct StepTimes {
  TimeNetwork network;
  std::vector<TimeReason> reasons;    ///< of each constraint, by its number
  std::vector<std::vector<TimeMark>> marks;  ///< of each step
  std::vector<StepLength> lengths;    ///< of each step
  std::vector<std::optional<int>> days;  ///< the day each step starts on, where that is said
  static constexpr TimeNetwork::Event origin = 0;
  static constexpr TimeNetwork::Event start(int step) { return 1 + 2 * step; }
  static constexpr TimeNetwork::Event end(int step) { return 2 + 2 * step; }
};

/// `flow` is that of the fiche. Steps on a circle, and those that wait for one, are in the network without their order.
StepTimes read_step_times(const fiche::Fiche& fiche, const Flow& flow);

/// Limits that cannot be kept together: the sides of a cycle of the network that no earlier one shares a limit with.
struct TimeConflict {
  std::vector<TimeNetwork::Side> sides;
};
/// One after the other: what was told is left out and the network looked at again, at most `most` times.
std::vector<TimeConflict> time_conflicts(const StepTimes& times, std::size_t most = 20);

}  // namespace tamis::flow

#endif
