#ifndef TESTS_FLOW_STATED_H
#define TESTS_FLOW_STATED_H

#include "core/flow/states.h"
#include "tests/flow/flowing.h"

namespace tamis::tests {

using flow::Range;
using flow::State;

struct Stated {
  std::unique_ptr<Flowing> flowing;
  flow::States states;
  [[nodiscard]] const State& step(int index) const { return states.steps.at(static_cast<std::size_t>(index)); }
  [[nodiscard]] const State& named(const char* id) const {
    int found = -1;  // the latest of that name
    for (std::size_t i = 0; i < flowing->flow.things.size(); ++i) {
      if (flowing->flow.things[i].id == id) found = static_cast<int>(i);
    }
    REQUIRE(found >= 0);
    return states.things[static_cast<std::size_t>(found)];
  }
};

inline Stated states_of(const std::string& text, fiche::Library& library = fiche::empty_library()) {
  Stated out{flow_of(text, library), {}};
  out.states = flow::read_states(out.flowing->fiche, out.flowing->flow, library);
  return out;
}

inline void is(const Range& range, double figure) {
  CHECK(range.low == Approx(figure).margin(1e-9));
  CHECK(range.high == Approx(figure).margin(1e-9));
}
inline void is(const Range& range, double low, double high) {
  CHECK(range.low == Approx(low).margin(1e-9));
  CHECK(range.high == Approx(high).margin(1e-9));
}

}  // namespace tamis::tests

#endif
