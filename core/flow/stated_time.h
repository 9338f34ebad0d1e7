#ifndef CORE_FLOW_STATED_TIME_H
#define CORE_FLOW_STATED_TIME_H

#include <optional>
#include <vector>

#include "core/fiche/fiche.h"
#include "core/flow/time_network.h"

namespace tamis::flow {

/// A length of time in whole seconds, the ends rounded outward: nothing is impossible by rounding.
struct TimeRange {
  TimeNetwork::Seconds least = 0;
  std::optional<TimeNetwork::Seconds> most;  ///< empty: no end stated
  friend bool operator==(const TimeRange&, const TimeRange&) = default;
};

/// What a stated time means: "12 to 16 min", "at least 4 h", "within 10 min" (0 to 10 min); a word of the trade by the
/// house's meaning, else by the usual one. "About" gives a quarter either way (common practice). Empty for what could
/// not be read or has no meaning ("briefly").
std::optional<TimeRange> time_meant(const fiche::Statement& statement, const fiche::Kitchen& kitchen);

/// A time mark in a step's own sentence (not in its notes, gates or rescue).
struct TimeMark {
  const fiche::Statement* statement = nullptr;
  TimeRange range;
  enum class Role : unsigned char {
    length,  ///< how long something in the step takes: "simmer 15 min"
    limit,   ///< by when it must be done: "within 10 min"
    other,   ///< neither: "every 30 min", "after 20 min"
  } role = Role::length;
  bool one_of_several = false;  ///< for a mode, a batch, a depth or an altitude, or one side of an "or"
};

/// Those of a step in order; figures for another batch than the first are left out.
std::vector<TimeMark> time_marks(const fiche::Fiche& fiche, fiche::Node step);

/// How long a step takes, by its attributes and its sentence.
struct StepLength {
  std::optional<TimeRange> hands;       ///< its hands attribute
  std::optional<TimeRange> unattended;  ///< its unattended attribute
  std::optional<TimeRange> sentence;    ///< its time marks: least is the longest that must pass; most only of a single one
  /// All of it: hands and unattended, or its sentence where that is longer. Nothing stated: from nothing to any time.
  TimeRange whole;
  bool stated = false;
};
StepLength read_length(const fiche::Fiche& fiche, fiche::Node step);
/// The same with the step's time_marks() at hand.
StepLength read_length(const fiche::Fiche& fiche, fiche::Node step, const std::vector<TimeMark>& marks);

}  // namespace tamis::flow

#endif
