#ifndef CORE_RECORD_JUDGE_H
#define CORE_RECORD_JUDGE_H

#include <string>
#include <vector>

#include "core/record/control_limit.h"
#include "core/record/log.h"

namespace tamis::record {

enum class Outcome : unsigned char {
  met,
  missed,
  open,  ///< the readings do not show it
};
std::string_view outcome_name(Outcome outcome);  ///< "met", "missed", "not shown"

/// A moment that decided something.
struct Decisive {
  double seconds = 0;
  std::string label;  ///< "21 °C"
};

struct Verdict {
  Outcome outcome = Outcome::open;
  std::vector<std::string> says;  ///< one line a stage, with the figures and the times
  std::vector<Decisive> moments;
  base::Span where;  ///< of the reading that decided a miss; empty when there is none
};

/// Holds readings against what a control point asks. A limit counts as reached by a reading that shows it, never by a line
/// drawn between two, and as held as long as unparted readings show it. A time is met when the longest it can have been, by the
/// readings on both sides of each moment, is short enough; missed when the shortest is too long; else it is not shown.
Verdict judge(const ControlLimit& asks, const Log& log);

}  // namespace tamis::record

#endif
