#ifndef CORE_FLOW_AGES_H
#define CORE_FLOW_AGES_H

#include <map>
#include <optional>
#include <vector>

#include "core/flow/step_times.h"

namespace tamis::flow {

/// How old what is taken can be: the time from the end of the step that made it to the start of the one that takes it,
/// by all that the fiche says of times and order. Worked out as it is asked for.
class Ages {
 public:
  /// Both must outlive it.
  Ages(const Flow& flow, const StepTimes& times);

  /// Empty for what no step makes, and where the times of the fiche contradict each other; without a most where nothing
  /// ends the wait.
  [[nodiscard]] std::optional<TimeRange> of_use(int use);
  [[nodiscard]] std::optional<TimeRange> between(int earlier_step, int later_step);

 private:
  const Flow& flow_;
  const StepTimes& times_;
  TimeNetwork::Solution solution_;
  std::map<int, std::vector<TimeNetwork::Window>> windows_;  // by step
};

}  // namespace tamis::flow

#endif
