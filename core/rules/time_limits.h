#ifndef CORE_RULES_TIME_LIMITS_H
#define CORE_RULES_TIME_LIMITS_H

#include <optional>
#include <string>
#include <vector>

#include "core/flow/step_times.h"
#include "core/rules/rule.h"

namespace tamis::rules {

/// Times of a fiche that cannot all be kept, sorted by what a cook would call them. Each is said by one rule.
enum class Conflict : unsigned char {
  limits,  ///< at-most, "within": contradictory-times
  keep,    ///< used later than it keeps: kept-too-long
  night,   ///< overnight, and the next step on the same day: overnight-against-days
  days,    ///< on an earlier day than what it waits for: days-out-of-order
};

struct Limits {
  const flow::StepTimes& times;
  std::vector<flow::TimeConflict> conflicts;
};
/// All conflicts of the fiche, worked out once; those of one kind with `is`. Empty where nothing can be too late.
const std::optional<Limits>& limits_of(const Check& check);
bool is(const Limits& limits, const flow::TimeConflict& conflict, Conflict kind);

/// One side of a conflict with what states it.
struct StatedSide {
  flow::TimeReason reason;
  bool least = false;
  flow::TimeNetwork::Seconds time = 0;
};
std::vector<StatedSide> stated_sides(const Limits& limits, const flow::TimeConflict& conflict);

/// The first side of those kinds that is a limit (a most); null when there is none.
const StatedSide* limit_of(const std::vector<StatedSide>& sides, std::initializer_list<flow::TimeReason::Kind> kinds);

/// The times that must pass, together.
flow::TimeNetwork::Seconds needed(const std::vector<StatedSide>& sides);

/// Where a side is stated: the attribute's value, the mark's text, else the element's head.
base::Span place_of(const Check& check, const StatedSide& side);

/// Adds the other sides to a finding as related places, each with its words.
void relate(const Check& check, base::Finding& finding, const std::vector<StatedSide>& sides, const StatedSide& main);

/// A time as a cook says it: "25 min", "54 h".
std::string time_words(flow::TimeNetwork::Seconds seconds);

/// The name of a step of the flow, in quotes.
std::string name_of_step(const Check& check, int step);

}  // namespace tamis::rules

#endif
