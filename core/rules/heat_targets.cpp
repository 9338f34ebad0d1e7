#include "core/rules/heat_targets.h"

#include <algorithm>

#include "core/rules/cooling_stages.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

class Targets {
 public:
  Targets(const Check& check, int step)
      : check_(check), document_(check.document), step_(step), node_(check.flow.steps[at(step)].node) {}

  std::vector<HeatTarget> read() {
    const auto& heats = stated_heats(check_, node_);
    for (auto heat = heats.rbegin(); heat != heats.rend() && out_.empty(); ++heat)
      if (heat->el == El::food_temp) add(*heat->statement, 0);
    for (Node c = document_.first_child(node_); c != fiche::none; c = document_.next(c)) {
      if (document_.el(c) == El::gate) gate(c);
      if (document_.el(c) == El::control) control(c);
    }
    return std::move(out_);
  }

 private:
  void add(const fiche::Statement& said, double seconds) {
    if (document_.get(said.node, At::place) == "surface" || !is_of_what_it_makes(said.node)) return;
    if (said.amount && said.amount->has_figure()) out_.push_back({&said, seconds, is_of_the_core(said)});
  }

  [[nodiscard]] bool is_of_what_it_makes(Node of) const {
    const std::string_view id = document_.get(of, At::of);
    const auto& gives = check_.flow.steps[at(step_)].gives;
    return id.empty() || std::any_of(gives.begin(), gives.end(),
                                     [&](int thing) { return check_.flow.things[at(thing)].id == id; });
  }

  void gate(Node gate) {
    if (!is_of_what_it_makes(gate)) return;
    for (Node c = document_.first_child(gate); c != fiche::none; c = document_.next(c)) {
      const fiche::Statement* said = document_.el(c) == El::food_temp ? check_.fiche.statement(c) : nullptr;
      if (said != nullptr) add(*said, 0);
    }
  }

  /// The last it asks for, by the end of the time it allows.
  void control(Node control) {
    const auto stages = cooling_stages(check_, control);
    if (!stages.empty()) return add(*stages.back().heat, stages.back().seconds);
    gate(control);
  }

  [[nodiscard]] bool is_of_the_core(const fiche::Statement& said) const {
    return document_.get(said.node, At::place) == "core" ||
           says_core(words_around(document_, document_.parent(said.node)));
  }

  const Check& check_;
  const fiche::Document& document_;
  int step_;
  Node node_;
  std::vector<HeatTarget> out_;
};

}  // namespace

std::vector<HeatTarget> heat_targets(const Check& check, int step) { return Targets(check, step).read(); }

std::vector<HeatTarget> targets_of_takers(const Check& check, int step) {
  std::vector<HeatTarget> out;
  for (const flow::Use& use : check.flow.uses) {
    if (use.mark == fiche::none || check.flow.things[at(use.thing)].maker != step) continue;
    const fiche::Statement* said = check.fiche.statement(use.mark, At::at);
    if (said != nullptr && said->amount && said->amount->has_figure()) out.push_back({said, 0, false});
  }
  return out;
}

}  // namespace tamis::rules
