#include "core/flow/distance_graph.h"

#include <algorithm>
#include <deque>
#include <queue>
#include <utility>

namespace tamis::flow {
namespace {

using Seconds = TimeNetwork::Seconds;

constexpr std::size_t as_index(int i) { return static_cast<std::size_t>(i); }

/// The cycle in the edges by which nodes were last reached, in the order of the way; empty when there is none.
std::vector<int> cycle_of(const std::vector<int>& reached_by, const std::vector<DistanceGraph::Edge>& edges) {
  std::vector<int> seen_from(reached_by.size(), -1);
  for (int start = 0; start < static_cast<int>(reached_by.size()); ++start) {
    int node = start;
    while (seen_from[as_index(node)] < 0 && reached_by[as_index(node)] >= 0) {
      seen_from[as_index(node)] = start;
      node = edges[as_index(reached_by[as_index(node)])].from;
    }
    if (seen_from[as_index(node)] != start) continue;
    std::vector<int> out;
    const int meeting = node;
    do {
      out.push_back(reached_by[as_index(node)]);
      node = edges[as_index(out.back())].from;
    } while (node != meeting);
    std::reverse(out.begin(), out.end());
    return out;
  }
  return {};
}

/// Looks for a negative cycle through one node, walk by walk of one edge more.
class Walks {
 public:
  explicit Walks(const DistanceGraph& graph) : graph_(graph) {}

  /// A negative closed walk from the node with at most `most` edges, cut down to its negative cycle; empty when there
  /// is none.
  std::vector<int> closed(int start, std::size_t most) {
    best_.assign(1, std::vector<std::optional<Seconds>>(as_index(graph_.nodes())));
    by_.clear();
    best_[0][as_index(start)] = 0;
    reached_.assign(1, start);
    for (std::size_t step = 1; step <= most && !reached_.empty(); ++step) {
      walk_on();
      const auto& home = best_[step][as_index(start)];
      if (home && *home < 0) return cycle_in(way_back(start, step));
    }
    return {};
  }

  [[nodiscard]] std::size_t looked_at() const { return looked_at_; }

 private:
  void walk_on() {
    const std::size_t step = best_.size();
    looked_at_ += as_index(graph_.nodes());
    best_.emplace_back(as_index(graph_.nodes()));
    by_.emplace_back(as_index(graph_.nodes()), -1);
    std::vector<int> next;
    for (const int node : reached_) {
      const Seconds so_far = *best_[step - 1][as_index(node)];
      for (const DistanceGraph::Edge& edge : graph_.from(node)) {
        ++looked_at_;
        auto& known = best_[step][as_index(edge.to)];
        if (!known) next.push_back(edge.to);
        if (known && *known <= so_far + edge.length) continue;
        known = so_far + edge.length;
        by_[step - 1][as_index(edge.to)] = static_cast<int>(&edge - graph_.edges().data());
      }
    }
    reached_ = std::move(next);
  }

  [[nodiscard]] std::vector<int> way_back(int node, std::size_t step) const {
    std::vector<int> out;
    for (; step > 0; --step) {
      out.push_back(by_[step - 1][as_index(node)]);
      node = graph_.edges()[as_index(out.back())].from;
    }
    std::reverse(out.begin(), out.end());
    return out;
  }

  /// A closed walk falls into cycles, and a negative one holds a negative cycle.
  [[nodiscard]] std::vector<int> cycle_in(const std::vector<int>& walk) const {
    std::vector<int> open;
    for (const int edge : walk) {
      open.push_back(edge);
      const int here = graph_.edges()[as_index(edge)].to;
      const auto begin = std::find_if(open.begin(), open.end(), [&](int e) { return graph_.edges()[as_index(e)].from == here; });
      if (begin == open.end()) continue;
      Seconds length = 0;
      for (auto e = begin; e != open.end(); ++e) length += graph_.edges()[as_index(*e)].length;
      if (length < 0) return {begin, open.end()};
      open.erase(begin, open.end());
    }
    return {};
  }

  const DistanceGraph& graph_;
  std::vector<std::vector<std::optional<Seconds>>> best_;  // by number of edges, by node
  std::vector<std::vector<int>> by_;
  std::vector<int> reached_;
  std::size_t looked_at_ = 0;  // edges, and places in the tables
};

}  // namespace

DistanceGraph::DistanceGraph(const TimeNetwork& network, bool reversed)
    : first_(static_cast<std::size_t>(network.events()) + 1, 0) {
  const auto& constraints = network.constraints();
  edges_.reserve(2 * constraints.size());
  for (int i = 0; i < static_cast<int>(constraints.size()); ++i) {
    const TimeNetwork::Constraint& c = constraints[as_index(i)];
    if (c.most) edges_.push_back({c.from, c.to, *c.most, {i, false}});
    if (c.least) edges_.push_back({c.to, c.from, -*c.least, {i, true}});
  }
  if (reversed) {
    for (Edge& edge : edges_) std::swap(edge.from, edge.to);
  }
  std::stable_sort(edges_.begin(), edges_.end(), [](const Edge& a, const Edge& b) { return a.from < b.from; });
  for (const Edge& edge : edges_) ++first_[as_index(edge.from) + 1];
  for (std::size_t i = 1; i < first_.size(); ++i) first_[i] += first_[i - 1];
}

std::span<const DistanceGraph::Edge> DistanceGraph::from(int node) const {
  const auto begin = as_index(first_[as_index(node)]);
  return std::span(edges_).subspan(begin, as_index(first_[as_index(node) + 1]) - begin);
}

// Bellman-Ford driven by a queue of the nodes that came nearer. A negative cycle shows as a cycle among the edges by
// which nodes were last reached; it is looked for once in as many improvements as there are nodes.
DistanceGraph::Ways DistanceGraph::shortest_ways() const {
  Ways out;
  out.length.assign(as_index(nodes()), 0);
  std::vector<int> reached_by(as_index(nodes()), -1);
  std::vector<char> waiting(as_index(nodes()), 1);
  std::deque<int> queue;
  for (int node = 0; node < nodes(); ++node) queue.push_back(node);
  int until_look = nodes();
  while (!queue.empty()) {
    const int node = queue.front();
    queue.pop_front();
    waiting[as_index(node)] = 0;
    for (const Edge& edge : from(node)) {
      const Seconds length = out.length[as_index(node)] + edge.length;
      if (length >= out.length[as_index(edge.to)]) continue;
      out.length[as_index(edge.to)] = length;
      reached_by[as_index(edge.to)] = static_cast<int>(&edge - edges_.data());
      if (waiting[as_index(edge.to)] == 0) {
        waiting[as_index(edge.to)] = 1;
        queue.push_back(edge.to);
      }
      if (--until_look > 0) continue;
      until_look = nodes();
      out.cycle = cycle_of(reached_by, edges_);
      if (!out.cycle.empty()) return out;
    }
  }
  return out;
}

std::vector<int> DistanceGraph::shorter_cycle(std::vector<int> known) const {
  constexpr std::size_t bound = 4'000'000;
  Walks walks(*this);
  std::vector<int> order;  // first the nodes of the known cycle
  for (const int edge : known) order.push_back(edges_[as_index(edge)].from);
  std::vector<char> on_it(as_index(nodes()), 0);
  for (const int node : order) on_it[as_index(node)] = 1;
  for (int node = 0; node < nodes(); ++node) {
    if (on_it[as_index(node)] == 0) order.push_back(node);
  }
  for (const int start : order) {
    const std::size_t most = known.size() - 1;
    if (most == 0 || walks.looked_at() + most * (edges_.size() + order.size()) > bound) break;
    std::vector<int> found = walks.closed(start, most);
    if (!found.empty()) known = std::move(found);
  }
  return known;
}

std::vector<std::optional<Seconds>> DistanceGraph::ways_from(int source, std::span<const Seconds> potential) const {
  using Reached = std::pair<Seconds, int>;
  std::vector<std::optional<Seconds>> out(as_index(nodes()));
  std::vector<char> done(as_index(nodes()), 0);
  std::priority_queue<Reached, std::vector<Reached>, std::greater<>> queue;
  out[as_index(source)] = 0;
  queue.emplace(0, source);
  while (!queue.empty()) {
    const auto [length, node] = queue.top();
    queue.pop();
    if (done[as_index(node)] != 0) continue;
    done[as_index(node)] = 1;
    for (const Edge& edge : from(node)) {
      const Seconds further = length + edge.length + potential[as_index(node)] - potential[as_index(edge.to)];
      auto& known = out[as_index(edge.to)];
      if (known && *known <= further) continue;
      known = further;
      queue.emplace(further, edge.to);
    }
  }
  for (int node = 0; node < nodes(); ++node) {
    if (auto& length = out[as_index(node)]) *length += potential[as_index(node)] - potential[as_index(source)];
  }
  return out;
}

}  // namespace tamis::flow
