#ifndef CORE_RECORD_LOG_FAULTS_H
#define CORE_RECORD_LOG_FAULTS_H

#include <map>
#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/record/log.h"

namespace tamis::record {

/// What is wrong with a log, said row by row up to eight times a rule, then counted.
class LogFaults {
 public:
  explicit LogFaults(std::vector<base::Finding>& out) : out_(out) {}
  void say(std::string_view rule, base::Span where, std::string message, std::string advice);
  /// Tells how many more there were, and puts all in the order of the file.
  void finish();

 private:
  struct Count {
    std::size_t said = 0, more = 0, last = 0;
  };
  std::vector<base::Finding>& out_;
  std::map<std::string, Count, std::less<>> counts_;
};

/// Takes out of the readings what no food does: values beyond what a kitchen's probe reads, and a reading or two that leap
/// 10 K away and back within five minutes. The log is parted there.
void part_at_spikes(Log& log, LogFaults& faults);
/// Parts the log where nothing was read for more than three times as long as is usual in it, and more than a minute.
void part_at_gaps(Log& log, LogFaults& faults);

}  // namespace tamis::record

#endif
