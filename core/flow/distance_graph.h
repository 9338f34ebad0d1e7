#ifndef CORE_FLOW_DISTANCE_GRAPH_H
#define CORE_FLOW_DISTANCE_GRAPH_H

#include <optional>
#include <span>
#include <vector>

#include "core/flow/time_network.h"

namespace tamis::flow {

/// The graph a time network is worked out on: `to` at most `length` after `from`.
class DistanceGraph {
 public:
  using Seconds = TimeNetwork::Seconds;
  struct Edge {
    int from = 0;
    int to = 0;
    Seconds length = 0;
    TimeNetwork::Side side;
  };

  /// With `reversed`, every edge the other way round.
  explicit DistanceGraph(const TimeNetwork& network, bool reversed = false);
  [[nodiscard]] int nodes() const { return static_cast<int>(first_.size()) - 1; }
  [[nodiscard]] const std::vector<Edge>& edges() const { return edges_; }  ///< sorted by `from`
  [[nodiscard]] std::span<const Edge> from(int node) const;

  /// Shortest ways from a source outside that leads to every node with length 0; or the edges of a negative cycle,
  /// in their order.
  struct Ways {
    std::vector<Seconds> length;
    std::vector<int> cycle;
  };
  [[nodiscard]] Ways shortest_ways() const;

  /// The edges of a negative cycle with fewer edges than `known`, or `known` itself where there is none or the search
  /// comes to its bound.
  [[nodiscard]] std::vector<int> shorter_cycle(std::vector<int> known) const;

  /// Shortest ways from a node (Dijkstra), `potential` being lengths of shortest_ways() for this graph, or minus those
  /// of the graph it is the reverse of. Empty where there is no way.
  [[nodiscard]] std::vector<std::optional<Seconds>> ways_from(int source, std::span<const Seconds> potential) const;

 private:
  std::vector<Edge> edges_;
  std::vector<int> first_;  // place in edges_ of each node's first edge, and one more
};

}  // namespace tamis::flow

#endif
