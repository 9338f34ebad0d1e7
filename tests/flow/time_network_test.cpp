#include <catch2/catch.hpp>

#include <optional>
#include <random>

#include "core/flow/time_network.h"

namespace {

using tamis::flow::TimeNetwork;
using Constraint = TimeNetwork::Constraint;
using Seconds = TimeNetwork::Seconds;
using Side = TimeNetwork::Side;

TimeNetwork network_of(int events, const std::vector<Constraint>& constraints) {
  TimeNetwork network(events);
  for (const Constraint& constraint : constraints) network.add(constraint);
  return network;
}

/// From where to where a side goes in the graph of distances, and how long it is.
struct Edge {
  int from;
  int to;
  Seconds length;
};
Edge edge_of(const TimeNetwork& network, Side side) {
  const Constraint& c = network.constraints().at(static_cast<std::size_t>(side.constraint));
  return side.least ? Edge{c.to, c.from, -c.least.value()} : Edge{c.from, c.to, c.most.value()};
}

Seconds length_of_cycle(const TimeNetwork& network, const std::vector<Side>& cycle) {
  Seconds length = 0;
  for (std::size_t i = 0; i < cycle.size(); ++i) {
    const Edge edge = edge_of(network, cycle[i]);
    REQUIRE(edge.to == edge_of(network, cycle[(i + 1) % cycle.size()]).from);
    length += edge.length;
  }
  return length;
}

void check_kept(const TimeNetwork& network, const std::vector<Seconds>& times) {
  for (const Constraint& c : network.constraints()) {
    const Seconds between = times.at(static_cast<std::size_t>(c.to)) - times.at(static_cast<std::size_t>(c.from));
    if (c.least) CHECK(between >= *c.least);
    if (c.most) CHECK(between <= *c.most);
  }
}

TimeNetwork random_network(std::mt19937& random) {
  const auto upto = [&random](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  TimeNetwork network(1 + upto(9));
  const int count = upto(2 * network.events() + 1);
  for (int i = 0; i < count; ++i) {
    Constraint c{upto(network.events()), upto(network.events()), {}, {}};
    if (upto(4) != 0) c.least = upto(40) - 10;
    if (upto(2) != 0) c.most = c.least.value_or(0) + upto(60);
    if (!c.least && !c.most) c.least = 0;
    network.add(c);
  }
  return network;
}

/// All pairs by the cubic table; empty when a limit cannot be kept.
std::optional<std::vector<std::optional<Seconds>>> table_of(const TimeNetwork& network) {
  const auto n = static_cast<std::size_t>(network.events());
  std::vector<std::optional<Seconds>> most(n * n);
  const auto put = [&](int from, int to, Seconds length) {
    auto& known = most[static_cast<std::size_t>(from) * n + static_cast<std::size_t>(to)];
    known = known ? std::min(*known, length) : length;
  };
  for (int i = 0; i < network.events(); ++i) put(i, i, 0);
  for (const Constraint& c : network.constraints()) {
    if (c.most) put(c.from, c.to, *c.most);
    if (c.least) put(c.to, c.from, -*c.least);
  }
  for (std::size_t k = 0; k < n; ++k) {
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) {
        if (!most[i * n + k] || !most[k * n + j]) continue;
        const Seconds way = *most[i * n + k] + *most[k * n + j];
        if (!most[i * n + j] || way < *most[i * n + j]) most[i * n + j] = way;
      }
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (*most[i * n + i] < 0) return std::nullopt;
  }
  return most;
}

TEST_CASE("a network without limits is consistent") {
  CHECK(TimeNetwork(0).solve().consistent);
  CHECK(TimeNetwork(3).solve().consistent);
  CHECK(TimeNetwork(3).windows_from(0, TimeNetwork(3).solve())[2] == TimeNetwork::Window{});
}

TEST_CASE("limits add up along the way") {
  // 0 –[10,20]→ 1 –[30,∞)→ 2, and 2 at most 45 after 0.
  const TimeNetwork network = network_of(3, {{0, 1, 10, 20}, {1, 2, 30, {}}, {0, 2, {}, 45}});
  const auto solution = network.solve();
  REQUIRE(solution.consistent);
  check_kept(network, solution.times);
  const auto windows = network.windows_from(0, solution);
  CHECK(windows[0] == TimeNetwork::Window{0, 0});
  CHECK(windows[1] == TimeNetwork::Window{10, 15});
  CHECK(windows[2] == TimeNetwork::Window{40, 45});
}

TEST_CASE("limits that cannot be kept together are named, and only those") {
  const TimeNetwork network = network_of(4, {{0, 1, 0, 600}, {1, 2, 900, {}}, {0, 3, 5, {}}, {0, 2, {}, 300}});
  const auto solution = network.solve();
  REQUIRE_FALSE(solution.consistent);
  CHECK(length_of_cycle(network, solution.cycle) == -600);
  std::vector<int> named;
  for (const Side side : solution.cycle) named.push_back(side.constraint);
  std::sort(named.begin(), named.end());
  CHECK(named == std::vector<int>{0, 1, 3});
}

TEST_CASE("a least above the most of one constraint is a cycle of two sides") {
  const TimeNetwork network = network_of(2, {{0, 1, 60, 30}});
  CHECK(network.solve().cycle.size() == 2);
}

TEST_CASE("an event that must come after itself is a cycle of one side") {
  const TimeNetwork network = network_of(2, {{1, 1, 5, {}}});
  CHECK(network.solve().cycle == std::vector<Side>{{0, true}});
}

TEST_CASE("of two cycles the one with fewer sides is told, wherever it stands") {
  std::vector<Constraint> constraints;
  for (int i = 0; i < 9; ++i) constraints.push_back({i, i + 1, 10, {}});
  constraints.push_back({0, 9, {}, 80});
  constraints.push_back({11, 12, 20, 10});
  const TimeNetwork network = network_of(13, constraints);
  CHECK(network.solve().cycle.size() == 2);
}

TEST_CASE("times beyond a thousand years are cut and never overflow") {
  const Seconds huge = std::numeric_limits<Seconds>::max();
  TimeNetwork network(200);
  for (int i = 0; i + 1 < network.events(); ++i) network.add({i, i + 1, huge, huge});
  const auto solution = network.solve();
  REQUIRE(solution.consistent);
  CHECK(network.windows_from(0, solution)[199] ==
        TimeNetwork::Window{199 * TimeNetwork::longest, 199 * TimeNetwork::longest});
  network.add({0, 199, -huge, 5});
  CHECK_FALSE(network.solve().consistent);
}

TEST_CASE("random networks agree with the cubic table, and a cycle told is one of the shortest") {
  std::mt19937 random(20260311);  // NOLINT: the same networks every time
  int consistent = 0;
  for (int round = 0; round < 600; ++round) {
    const TimeNetwork network = random_network(random);
    const auto solution = network.solve();
    const auto table = table_of(network);
    CAPTURE(round, network.events(), network.constraints().size());
    REQUIRE(solution.consistent == table.has_value());
    if (!solution.consistent) {
      CHECK(length_of_cycle(network, solution.cycle) < 0);
      CHECK(network.solve().cycle == solution.cycle);
      continue;
    }
    ++consistent;
    CHECK(solution.cycle.empty());
    check_kept(network, solution.times);
    const auto n = static_cast<std::size_t>(network.events());
    const auto windows = network.all_windows(solution);
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) {
        CHECK(windows[i * n + j].most == (*table)[i * n + j]);
        const auto back = (*table)[j * n + i];
        CHECK(windows[i * n + j].least == (back ? std::optional<Seconds>(-*back) : std::nullopt));
      }
    }
  }
  CHECK(consistent > 150);
  CHECK(consistent < 450);
}

TEST_CASE("a chain of twenty thousand events is worked out, both ways it can end") {
  TimeNetwork network(20000);
  for (int i = 0; i + 1 < network.events(); ++i) network.add({i, i + 1, 60, {}});
  network.add({0, 19999, {}, 19999 * 60});
  CHECK(network.solve().consistent);
  network.add({0, 19999, {}, 19999 * 60 - 1});
  const auto solution = network.solve();
  REQUIRE_FALSE(solution.consistent);
  CHECK(length_of_cycle(network, solution.cycle) == -1);
}

}  // namespace
