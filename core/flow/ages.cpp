#include "core/flow/ages.h"

#include <algorithm>

namespace tamis::flow {
namespace {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

}  // namespace

Ages::Ages(const Flow& flow, const StepTimes& times) : flow_(flow), times_(times), solution_(times.network.solve()) {}

std::optional<TimeRange> Ages::of_use(int use) {
  const Use& taken = flow_.uses[idx(use)];
  const int maker = flow_.things[idx(taken.thing)].maker;
  return maker < 0 ? std::nullopt : between(maker, taken.step);
}

std::optional<TimeRange> Ages::between(int earlier, int later) {
  if (!solution_.consistent) return std::nullopt;
  auto known = windows_.find(earlier);
  if (known == windows_.end()) {
    known = windows_.emplace(earlier, times_.network.windows_from(StepTimes::end(earlier), solution_)).first;
  }
  const TimeNetwork::Window& window = known->second[idx(StepTimes::start(later))];
  return TimeRange{std::max<TimeNetwork::Seconds>(0, window.least.value_or(0)), window.most};
}

}  // namespace tamis::flow
