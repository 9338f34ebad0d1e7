#include "core/base/utf8.h"
#include "core/measure/bound.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;

constexpr double hair = 0.5;  // °C: rounding of one scale to the other

/// A control's limit: which way it bounds, by its form or by the words before it.
struct Limit {
  std::optional<double> least, most;
};

Limit limit_of(const Check& check, const Statement& figure) {
  const auto low = low_of(figure);
  const auto high = high_of(figure);
  if (low && !high) return {low, {}};
  if (high && !low) return {{}, high};
  switch (measure::bound_before(words_before(check.document, figure.node), check.fiche.language)) {
    case measure::Bound::least: return {low, {}};
    case measure::Bound::most: return {{}, high};
    default: return {};
  }
}

bool is_for_holding(std::string_view words) {
  return says(words, {"hold", "held", "keep", "kept", "service", "serv", "stor", "until", "maint", "halten", "lager", "mant", "conserv"});
}

/// The step's own last temperature of the food, where that is a target of what the control is about.
const StatedHeat* target_of(const Check& check, const std::vector<StatedHeat>& heats, const Statement& limit) {
  const StatedHeat* out = nullptr;
  for (const StatedHeat& heat : heats) {
    if (heat.el == El::food_temp) out = &heat;
  }
  if (out == nullptr) return nullptr;
  const std::string_view of = check.document.get(out->statement->node, At::of);
  const std::string_view limits = check.document.get(limit.node, At::of);
  const std::string_view place = check.document.get(out->statement->node, At::place);
  if (place == "surface" || (!of.empty() && of != limits)) return nullptr;
  return out;
}

void hold_against(Check& check, Node step, const StatedHeat& target, const Statement& figure, const Limit& limit) {
  const bool too_low = limit.least && target.high && *target.high < *limit.least - hair;
  const bool too_high = limit.most && target.low && *target.low > *limit.most + hair;
  if (!too_low && !too_high) return;
  const std::string& words = own_sentence(check, step);
  if (says(words, {"rest", "carry", "rise", "stand", "repos", "ruh", "then", "puis", "dann", "luego"})) return;
  const bool says_itself = figure.amount->form == measure::Amount::Form::at_least || figure.amount->form == measure::Amount::Form::at_most;
  check.say(figure.where,
            "the control point asks for " + (says_itself ? "" : std::string(too_low ? "at least " : "at most ")) + figure.text +
                ", and the step itself goes to " + target.statement->text,
            "bring the step to what the control point asks for")
      .related.push_back({target.statement->where, "the step's own figure", {}, {}, {}});
}

void look_at(Check& check, Node step) {
  const fiche::Document& document = check.document;
  const std::vector<StatedHeat>& heats = stated_heats(check, step);
  for (Node control = document.first_child(step); control != fiche::none; control = document.next(control)) {
    if (document.el(control) != El::control || is_for_holding(base::lower(document.all_text(control)))) continue;
    for (Node mark = document.first_child(control); mark != fiche::none; mark = document.next(mark)) {
      const Statement* figure = document.el(mark) == El::food_temp ? check.fiche.statement(mark) : nullptr;
      const StatedHeat* target = figure == nullptr ? nullptr : target_of(check, heats, *figure);
      if (target != nullptr) hold_against(check, step, *target, *figure, limit_of(check, *figure));
    }
  }
}

void run(Check& check) {
  for (const fiche::Step& step : check.fiche.steps) look_at(check, step.node);
}

}  // namespace

/// A control point whose limit its own step does not reach.
const Rule control_against_its_step = {
    .id = "control-against-its-step",
    .severity = base::Severity::error,
    .topic = "temperature",
    .summary = "a control point whose limit the step's own figure does not meet",
    .explanation = R"(The step cooks to 63 °C and its control point asks for at least 75 °C: made as written, every batch fails its
own check. One of the two figures is not the one that was meant.

Which limit holds is for the author, local rules and the person who answers for food safety; this rule only sees that
the two differ. Holding for service and the rise while a roast rests are let be.)",
    .bad = R"(    <step>Cook the filling to <food-temp>63 °C</food-temp>.
      <control hazard="bacteria that survive" check="probe in the middle" often="each batch" who="the cook" action="cook on">At least <food-temp>75 °C</food-temp>.</control></step>)",
    .good = R"(    <step>Cook the filling to <food-temp>78 °C</food-temp>.
      <control hazard="bacteria that survive" check="probe in the middle" often="each batch" who="the cook" action="cook on">At least <food-temp>75 °C</food-temp>.</control></step>)",
    .source = "the recipe's own figures",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
