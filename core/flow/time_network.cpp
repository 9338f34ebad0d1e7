#include "core/flow/time_network.h"

#include <algorithm>
#include <cassert>

#include "core/flow/distance_graph.h"

namespace tamis::flow {
namespace {

using Seconds = TimeNetwork::Seconds;

std::optional<Seconds> cut(std::optional<Seconds> time) {
  if (!time) return time;
  return std::clamp(*time, -TimeNetwork::longest, TimeNetwork::longest);
}

std::optional<Seconds> minus(std::optional<Seconds> time) {
  if (!time) return time;
  return -*time;
}

std::vector<TimeNetwork::Window> windows(const DistanceGraph& ahead, const DistanceGraph& back, int origin,
                                         std::span<const Seconds> times, std::span<const Seconds> against) {
  const auto most = ahead.ways_from(origin, times);
  const auto least = back.ways_from(origin, against);
  std::vector<TimeNetwork::Window> out(most.size());
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = {minus(least[i]), most[i]};
  return out;
}

std::vector<Seconds> negated(const std::vector<Seconds>& times) {
  std::vector<Seconds> out(times.size());
  std::transform(times.begin(), times.end(), out.begin(), [](Seconds time) { return -time; });
  return out;
}

}  // namespace

int TimeNetwork::add(const Constraint& constraint) {
  assert(constraint.from >= 0 && constraint.from < events_ && constraint.to >= 0 && constraint.to < events_);
  Constraint& added = constraints_.emplace_back(constraint);
  added.least = cut(added.least);
  added.most = cut(added.most);
  return static_cast<int>(constraints_.size()) - 1;
}

TimeNetwork::Solution TimeNetwork::solve() const {
  const DistanceGraph graph(*this);
  DistanceGraph::Ways ways = graph.shortest_ways();
  Solution out;
  out.consistent = ways.cycle.empty();
  if (out.consistent) {
    out.times = std::move(ways.length);
    return out;
  }
  for (const int edge : graph.shorter_cycle(std::move(ways.cycle))) {
    out.cycle.push_back(graph.edges()[static_cast<std::size_t>(edge)].side);
  }
  return out;
}

std::vector<TimeNetwork::Window> TimeNetwork::windows_from(Event origin, const Solution& solution) const {
  assert(solution.consistent && solution.times.size() == static_cast<std::size_t>(events_));
  return windows(DistanceGraph(*this), DistanceGraph(*this, true), origin, solution.times, negated(solution.times));
}

std::vector<TimeNetwork::Window> TimeNetwork::all_windows(const Solution& solution) const {
  assert(solution.consistent && solution.times.size() == static_cast<std::size_t>(events_));
  const DistanceGraph ahead(*this);
  const DistanceGraph back(*this, true);
  const std::vector<Seconds> against = negated(solution.times);
  std::vector<Window> out;
  out.reserve(static_cast<std::size_t>(events_) * static_cast<std::size_t>(events_));
  for (Event origin = 0; origin < events_; ++origin) {
    const std::vector<Window> row = windows(ahead, back, origin, solution.times, against);
    out.insert(out.end(), row.begin(), row.end());
  }
  return out;
}

}  // namespace tamis::flow
