#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/figure_value.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_name.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;

constexpr double apart = 5;  // °C that a pan loses on its way (common practice)

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// A temperature that a thing must have when the step takes it or goes on with it.
struct Gate {
  const Statement* statement;
  int step;   ///< that asks for it
  int maker;  ///< the step that leaves it
};

/// Whether between the two a wait is stated, or the days differ.
bool time_passes(const Check& check, int maker, int step) {
  const fiche::Document& document = check.document;
  const Node asks = check.flow.steps[at(step)].node;
  if (document.find(asks, At::at_least) != fiche::none) return true;
  const auto day = [&](int s) {
    const Node node = check.flow.steps[at(s)].node;
    const std::string_view own = document.get(node, At::day);
    const Node component = check.flow.steps[at(s)].component;
    return own.empty() && component != fiche::none ? document.get(component, At::day) : own;
  };
  return day(maker) != day(step);
}

/// All that the step says, its gates and controls with it, but for what explains and rescues.
std::string words_of(const Check& check, Node step) {
  const fiche::Document& document = check.document;
  std::string out = own_sentence(check, step) + " " + std::string(document.get(step, At::do_));
  for (Node c = document.first_child(step); c != fiche::none; c = document.next(c)) {
    const El el = document.el(c);
    if (el == El::gate || el == El::control || el == El::done) out += " " + base::lower(document.all_text(c));
  }
  return base::lower(out);
}

void hold_against(Check& check, const Gate& gate) {
  const Statement* left = left_at(check, gate.maker);
  if (left == nullptr || left == gate.statement) return;
  const auto low = low_of(*left);
  const auto high = high_of(*left);
  const auto least = low_of(*gate.statement);
  const auto most = high_of(*gate.statement);
  const bool too_hot = low && most && *low > *most + apart;
  const bool too_cold = high && least && *high < *least - apart;
  if (!too_hot && !too_cold) return;
  const Node asks = check.flow.steps[at(gate.step)].node;
  const std::string words = words_of(check, asks);
  if (says_waiting(words) || (too_hot ? says_cooling(words) : says_heating(words)) || time_passes(check, gate.maker, gate.step)) return;
  const Node leaves = check.flow.steps[at(gate.maker)].node;
  const std::string by = gate.maker == gate.step ? "this step brings it to " : step_name(check.document, leaves) + " leaves it at ";
  check.say(gate.statement->where,
            "this asks for " + gate.statement->text + ", and " + by + left->text + "; nothing between " + (too_hot ? "cools" : "warms") + " it",
            too_hot ? "say how it is cooled and how long that takes, or correct one of the figures"
                    : "say how it is warmed, or correct one of the figures")
      .related.push_back({left->where, "left at this temperature", {}, {}, {}});
}

/// use at="...": what an earlier step of this fiche made.
void look_at_uses(Check& check) {
  for (const flow::Use& use : check.flow.uses) {
    if (use.mark == fiche::none || use.thing < 0) continue;
    const flow::Thing& thing = check.flow.things[at(use.thing)];
    const Statement* gate = check.fiche.statement(use.mark, At::at);
    if (gate != nullptr && thing.kind == flow::Thing::Kind::result && thing.maker >= 0 && thing.maker != use.step) {
      hold_against(check, {gate, use.step, thing.maker});
    }
  }
}

/// The step that leaves what a gate is of: the gate's own step where it makes it, else the maker of what it names.
int maker_of(const Check& check, Node gate, int step) {
  const std::string_view of = check.document.get(gate, At::of);
  if (of.empty()) return step;
  const auto& makes = check.fiche.steps[at(step)].makes;  // in its own words: a name that is carried on is not made anew
  if (std::find(makes.begin(), makes.end(), of) != makes.end()) return step;
  for (const int use : check.flow.steps[at(step)].takes) {
    const flow::Thing& thing = check.flow.things[at(check.flow.uses[at(use)].thing)];
    if (thing.id == of && thing.kind == flow::Thing::Kind::result) return thing.maker;
  }
  return -1;
}

void look_at_gates(Check& check, int step) {
  const fiche::Document& document = check.document;
  for (Node gate = document.first_child(check.flow.steps[at(step)].node); gate != fiche::none; gate = document.next(gate)) {
    if (document.el(gate) != El::gate) continue;
    const int maker = maker_of(check, gate, step);
    for (Node mark = document.first_child(gate); mark != fiche::none && maker >= 0; mark = document.next(mark)) {
      const Statement* figure = document.el(mark) == El::food_temp ? check.fiche.statement(mark) : nullptr;
      if (figure != nullptr) hold_against(check, {figure, step, maker});
    }
  }
}

void run(Check& check) {
  look_at_uses(check);
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at_gates(check, step);
}

}  // namespace

/// "At most 38 °C", right behind a step that leaves it at 84 °C.
const Rule gate_against_step_before = {
    .id = "gate-against-step-before",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a temperature asked for that the step before does not leave, and nothing brings about",
    .explanation = R"(The custard leaves the pan at 84 °C and the next step wants it at 38 °C at most: the cook who has not been told
how to cool it waits, or does not and melts the cream. The time it takes is in no plan either.

Silent where anything is stirred in or waited for between, where days or a least time lie between, and where the
step says so itself: "when it is at 28 °C", "cool but not set".)",
    .bad = R"(    <step makes="custard">Stir over a low flame to <food-temp>84 °C</food-temp>.</step>
    <step>Fold the cream into the <use of="custard" at="at most 38 °C">custard</use>.</step>)",
    .good = R"(    <step makes="custard">Stir over a low flame to <food-temp>84 °C</food-temp>.</step>
    <step makes="cool-custard">Cool the <use of="custard">custard</use> over ice to <food-temp>30 °C</food-temp>.</step>
    <step>Fold the cream into the <use of="cool-custard" at="at most 38 °C">custard</use>.</step>)",
    .source = "the recipe's own figures",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
