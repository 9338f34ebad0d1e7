#ifndef CORE_FLOW_TIME_NETWORK_H
#define CORE_FLOW_TIME_NETWORK_H

#include <cstdint>
#include <optional>
#include <vector>

namespace tamis::flow {

/// A simple temporal network (Dechter, Meiri, Pearl: Temporal constraint networks, Artificial Intelligence 49, 1991):
/// events, and between two of them the least and the most time that may pass. Whole seconds, exact.
///
/// Times are the shortest ways in a graph where "b at most w after a" is an edge a → b of length w; limits that
/// cannot all be kept are a cycle of negative length. Recipes are sparse, so consistency is a queue-driven
/// Bellman-Ford; what follows from it for one event or for all pairs is Dijkstra on the lengths that it leaves
/// non-negative (Johnson), not a cubic table.
class TimeNetwork {
 public:
  using Event = int;
  using Seconds = std::int64_t;
  /// About 1,000 years; longer times are cut to it, so that no sum overflows (at most 2^24 events).
  static constexpr Seconds longest = std::int64_t{1} << 35;

  /// `to` comes at least and at most so long after `from`; either may be left open, and either may be negative.
  struct Constraint {
    Event from = 0;
    Event to = 0;
    std::optional<Seconds> least;
    std::optional<Seconds> most;
    friend bool operator==(const Constraint&, const Constraint&) = default;
  };
  /// One side of a constraint.
  struct Side {
    int constraint = 0;  ///< as add() numbered it
    bool least = false;  ///< its least; else its most
    friend bool operator==(const Side&, const Side&) = default;
  };
  /// How long after another event an event can come; an open end has no limit.
  struct Window {
    std::optional<Seconds> least;
    std::optional<Seconds> most;
    friend bool operator==(const Window&, const Window&) = default;
  };

  explicit TimeNetwork(int events = 0) : events_(events) {}
  Event add_event() { return events_++; }
  [[nodiscard]] int events() const { return events_; }
  /// Its number: 0, 1, 2 ... Both events must be there.
  int add(const Constraint& constraint);
  [[nodiscard]] const std::vector<Constraint>& constraints() const { return constraints_; }

  /// What the network allows.
  struct Solution {
    bool consistent = true;
    /// When not: the sides of one cycle that cannot be kept together, each from the event where the one before it
    /// ends. Of several cycles one with the fewest sides, where the search for it stays within its bound (about
    /// four million edges looked at), else as found. The same for the same network.
    std::vector<Side> cycle;
    /// When consistent: one time for each event at which all limits are kept, none above 0.
    std::vector<Seconds> times;
  };
  [[nodiscard]] Solution solve() const;

  /// The windows of all events seen from one. `solution` must be this network's, and consistent.
  [[nodiscard]] std::vector<Window> windows_from(Event origin, const Solution& solution) const;
  /// The minimal network: row by row, [from * events() + to]. Likewise.
  [[nodiscard]] std::vector<Window> all_windows(const Solution& solution) const;

 private:
  int events_ = 0;
  std::vector<Constraint> constraints_;
};

}  // namespace tamis::flow

#endif
