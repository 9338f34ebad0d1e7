// Answers questions about time networks for networkx_check.py: a network a line on standard input, an answer a line
// on standard output.
//   EVENTS  FROM TO LEAST MOST  FROM TO LEAST MOST ...      "-" for an end left open
//   cycle  CONSTRAINT least|most ...                        when the limits cannot be kept together
//   windows  LEAST MOST  LEAST MOST ...                     of all pairs, row by row

#include <iostream>
#include <sstream>
#include <string>

#include "core/flow/time_network.h"

namespace {

using tamis::flow::TimeNetwork;

std::optional<TimeNetwork::Seconds> read_end(std::istream& in) {
  std::string word;
  in >> word;
  if (word == "-") return std::nullopt;
  return std::stoll(word);
}

void write_end(std::optional<TimeNetwork::Seconds> time) {
  if (time) {
    std::cout << ' ' << *time;
  } else {
    std::cout << " -";
  }
}

void answer(const std::string& line) {
  std::istringstream in(line);
  int events = 0;
  in >> events;
  TimeNetwork network(events);
  for (TimeNetwork::Constraint constraint; in >> constraint.from >> constraint.to;) {
    constraint.least = read_end(in);
    constraint.most = read_end(in);
    network.add(constraint);
  }
  const TimeNetwork::Solution solution = network.solve();
  std::cout << (solution.consistent ? "windows" : "cycle");
  for (const TimeNetwork::Side side : solution.cycle) {
    std::cout << ' ' << side.constraint << (side.least ? " least" : " most");
  }
  if (solution.consistent) {
    for (const TimeNetwork::Window& window : network.all_windows(solution)) {
      write_end(window.least);
      write_end(window.most);
    }
  }
  std::cout << '\n';
}

}  // namespace

int main() {
  for (std::string line; std::getline(std::cin, line);) answer(line);
  return 0;
}
