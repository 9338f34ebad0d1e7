#ifndef CORE_RECORD_SPOT_READINGS_H
#define CORE_RECORD_SPOT_READINGS_H

#include <optional>
#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/record/control_limit.h"
#include "core/record/csv.h"
#include "core/record/judge.h"

namespace tamis::record {

/// Readings by hand of one control point: a temperature, when, whose initials, what was done where it missed. What a line
/// lacks is said (record-incomplete).
class SpotReadings {
 public:
  SpotReadings(const ControlPoint& point, std::vector<base::Finding>& faults) : point_(point), faults_(faults) {}
  /// A row of the record (columns found, time, initials, action taken) with something in "found".
  void add(const CsvRow& row);
  [[nodiscard]] bool empty() const { return !any_; }
  /// Where each reading stands for a piece of its own (a joint, a pan), each is judged alone, and one that missed is made good
  /// by an action written down and a later reading that meets; else they are judged together, as a log is.
  Verdict judge(Log& log);

 private:
  struct Spot {
    Reading reading;
    bool timed = false, acted = false;
  };
  void say(std::string_view rule, base::Span where, std::string message, std::string advice);
  std::optional<double> time_of(const CsvRow& row);
  Verdict judge_each(const Log& log);
  void look_for_pauses(const Log& log);
  [[nodiscard]] std::string what_to_do() const;

  const ControlPoint& point_;
  std::vector<base::Finding>& faults_;
  std::vector<Spot> spots_;
  bool any_ = false, by_hand_ = false, met_by_hand_ = false;
  Scale scale_ = Scale::celsius;  ///< Fahrenheit where one of them is
  std::optional<double> last_;
  int nights_ = 0;
};

}  // namespace tamis::record

#endif
