#include <algorithm>

#include "core/base/utf8.h"
#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

std::size_t idx(int i) { return static_cast<std::size_t>(i); }

class Order {
 public:
  explicit Order(Work& work) : work_(work), flow_(work.flow) {}

  void run() {
    for (Step& step : flow_.steps) wait(step);
    wait_for_ovens();
    for (Step& step : flow_.steps) {
      std::sort(step.waits_for.begin(), step.waits_for.end());
      step.waits_for.erase(std::unique(step.waits_for.begin(), step.waits_for.end()), step.waits_for.end());
    }
    put_in_order();
    if (flow_.order.size() < flow_.steps.size()) find_circle();
  }

 private:
  void wait(Step& step) {
    if (step.before >= 0) step.waits_for.push_back(step.before);
    for (const int use : step.takes) wait_for_thing(step, flow_.things[idx(flow_.uses[idx(use)].thing)]);
    std::string_view after = work_.document.get(step.node, At::after);
    while (!(after = base::trimmed(after)).empty()) {
      const std::size_t end = std::min(after.find_first_of(" \t\n\r"), after.size());
      wait_for_named(step, after.substr(0, end));
      after.remove_prefix(end);
    }
  }

  void wait_for_thing(Step& step, const Thing& thing) {
    // What comes back as an ingredient, and is made later, is left over from the batch before.
    const int maker = thing.returns >= 0 ? flow_.things[idx(thing.returns)].maker : thing.maker;
    if (maker < 0 || (thing.returns >= 0 && maker >= step.index)) return;
    if (thing.kind == Thing::Kind::part && maker >= step.index) return;
    step.waits_for.push_back(maker);
  }

  /// `after` names a step, or what one makes, or a component.
  void wait_for_named(Step& step, std::string_view id) {
    for (auto [known, end] = work_.fiche.ids.equal_range(id); known != end; ++known) {
      int named = flow_.step_of(known->second);
      if (named < 0) {
        const int thing = flow_.thing_of(known->second);
        if (thing >= 0) named = flow_.things[idx(thing)].maker;
      }
      if (named >= 0) step.waits_for.push_back(named);
    }
  }

  /// The next step of the component that bakes waits for the one that heats the oven.
  void wait_for_ovens() {
    int oven = -1;
    for (Step& step : flow_.steps) {
      if (oven >= 0 && flow_.steps[idx(oven)].component != step.component) oven = -1;
      if (step.aside) {
        if (!work_.fiche.steps[idx(step.index)].actions.empty()) oven = step.index;
      } else if (oven >= 0 && bakes(step)) {
        step.waits_for.push_back(oven);
        oven = -1;
      }
    }
  }

  [[nodiscard]] bool bakes(const Step& step) const {
    if (work_.document.get(step.node, At::on) == "oven" || work_.document.child(step.node, El::oven_temp) != fiche::none) {
      return true;
    }
    const auto& actions = work_.fiche.steps[idx(step.index)].actions;
    return std::any_of(actions.begin(), actions.end(),
                       [](std::string_view action) { return action == "bake" || action == "roast"; });
  }

  /// Document order, as far as it can be kept: of those that wait for nothing any more, the first.
  void put_in_order() {
    std::vector<int> open(flow_.steps.size(), 0);
    std::vector<std::vector<int>> behind(flow_.steps.size());
    std::vector<int> ready;
    for (const Step& step : flow_.steps) {
      open[idx(step.index)] = static_cast<int>(step.waits_for.size());
      for (const int earlier : step.waits_for) behind[idx(earlier)].push_back(step.index);
      if (step.waits_for.empty()) ready.push_back(step.index);
    }
    const auto later = [](int a, int b) { return a > b; };
    std::make_heap(ready.begin(), ready.end(), later);
    flow_.order.reserve(flow_.steps.size());
    while (!ready.empty()) {
      std::pop_heap(ready.begin(), ready.end(), later);
      const int step = ready.back();
      ready.pop_back();
      flow_.order.push_back(step);
      for (const int next : behind[idx(step)]) {
        if (--open[idx(next)] > 0) continue;
        ready.push_back(next);
        std::push_heap(ready.begin(), ready.end(), later);
      }
    }
  }

  /// From any step left out of the order, back over one it waits for that is left out too, until one comes again.
  void find_circle() {
    std::vector<bool> left(flow_.steps.size(), true);
    for (const int step : flow_.order) left[idx(step)] = false;
    int at = static_cast<int>(std::find(left.begin(), left.end(), true) - left.begin());
    std::vector<int> path;
    while (std::find(path.begin(), path.end(), at) == path.end()) {
      path.push_back(at);
      const std::vector<int>& waits = flow_.steps[idx(at)].waits_for;
      at = *std::find_if(waits.begin(), waits.end(), [&](int earlier) { return left[idx(earlier)]; });
    }
    flow_.circle.assign(std::find(path.begin(), path.end(), at), path.end());
  }

  Work& work_;
  Flow& flow_;
};

}  // namespace

void put_in_order(Work& work) { Order(work).run(); }

}  // namespace tamis::flow
