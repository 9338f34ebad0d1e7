#include "core/draw/steps_graph.h"

#include <algorithm>

namespace tamis::draw {
namespace {

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

class Picture {
 public:
  explicit Picture(const Steps& steps) : steps_(steps), box_of_(steps.flow.steps.size(), -1) {}

  Graph make() {
    graph_.title = steps_.fiche.title;
    for (const fiche::Node component : steps_.components()) {
      const auto steps = steps_.steps_of(component);
      if (steps.empty()) continue;
      const int group = static_cast<int>(graph_.groups.size());
      graph_.groups.emplace_back(component == fiche::none ? "" : steps_.fiche.document->get(component, fiche::At::title));
      for (const auto& [number, step] : steps) add(number, *step, group);
    }
    for (std::size_t i = 0; i < steps_.flow.steps.size(); ++i) {
      if (box_of_[i] >= 0) link(steps_.flow.steps[i]);
    }
    return std::move(graph_);
  }

 private:
  void add(int number, const flow::Step& step, int group) {
    Graph::Box box;
    box.group = group;
    box.perhaps = step.optional;
    box.head = std::to_string(number) + "  " + names_of_actions(steps_, step.index);
    for (const int use : step.takes) {
      if (!left_out(use)) box.in.push_back(line_of(use));
    }
    const bool several = step.gives.size() > 1;
    for (const int thing : step.gives) {
      const flow::State& state = steps_.states.things[idx(thing)];
      std::string name = name_of_result(steps_, thing);
      if (name.empty()) name = "goes on";
      box.out.push_back({"= " + name, several ? "" : figures_of(state)});
    }
    if (several) box.out.push_back({"together", figures_of(steps_.states.steps[idx(step.index)])});
    box_of_[idx(step.index)] = static_cast<int>(graph_.boxes.size());
    graph_.boxes.push_back(std::move(box));
  }

  [[nodiscard]] std::string figures_of(const flow::State& state) const {
    std::string out = grams_text(state.grams, steps_.fiche.reading.language);
    if (state.knows_temperature()) out += ", " + celsius_text(state.celsius);
    return out;
  }

  /// Stands for another of the same mark, and is not what is made.
  [[nodiscard]] bool left_out(int number) const {
    const flow::State& state = steps_.states.uses[idx(number)];
    return steps_.use(number).instead && state.grams && state.grams->high == 0;
  }

  [[nodiscard]] Graph::Line line_of(int number) const {
    const flow::Use& use = steps_.use(number);
    const flow::Thing& thing = steps_.thing(use.thing);
    std::string name(thing.name);
    if (name.empty()) name = "what comes of it";
    if (thing.maker >= 0) name = "↓ " + name;
    if (use.instead) name += " (or)";
    const flow::State& state = steps_.states.uses[idx(number)];
    return {name, thing.trace ? "a trace" : grams_text(state.grams, steps_.fiche.reading.language)};
  }

  void link(const flow::Step& step) {
    std::vector<int>& after = graph_.boxes[idx(box_of_[idx(step.index)])].after;
    const auto from = [&](int maker) {
      if (maker < 0 || maker == step.index || box_of_[idx(maker)] < 0) return;
      const int box = box_of_[idx(maker)];
      if (std::find(after.begin(), after.end(), box) == after.end()) after.push_back(box);
    };
    for (const int use : step.takes) {
      const flow::Thing& thing = steps_.thing(steps_.use(use).thing);
      const bool comes_back = thing.returns >= 0;
      from(comes_back ? steps_.thing(thing.returns).maker : thing.maker);
    }
  }

  const Steps& steps_;
  Graph graph_;
  std::vector<int> box_of_;  // of each step
};

}  // namespace

Graph steps_graph(const Steps& steps) { return Picture(steps).make(); }

}  // namespace tamis::draw
