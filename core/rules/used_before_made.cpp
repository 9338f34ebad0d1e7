#include <algorithm>

#include "core/rules/circle.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/step_name.h"

namespace tamis::rules {
namespace {

using flow::Step;
using flow::Thing;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Whether a step above makes a result of that name as well.
bool made_above(const Check& check, const Thing& thing, int step) {
  return std::any_of(check.flow.things.begin(), check.flow.things.end(), [&](const Thing& other) {
    return other.kind == Thing::Kind::result && other.id == thing.id && other.maker >= 0 && other.maker < step;
  });
}

void look_at(Check& check, const flow::Use& use) {
  if (use.thing < 0 || use.step < 0 || use.mark == fiche::none) return;
  const Thing& thing = check.flow.things[at(use.thing)];
  if (thing.kind != Thing::Kind::result || thing.id.empty() || thing.maker <= use.step) return;
  const Step& step = check.flow.steps[at(use.step)];
  const Step& maker = check.flow.steps[at(thing.maker)];
  if (step.component != maker.component || says_after(check, step, maker) || made_above(check, thing, use.step)) return;
  base::Finding& finding =
      check.say(check.document.head_span(use.mark),
                quoted(thing.id) + " is used here and made only further down, in " + step_name(check.document, maker.node),
                "move the step that makes it up; a card is read from the top");
  finding.related.push_back({check.document.head_span(maker.node), "made here", {}, {}, {}});
}

void run(Check& check) {
  const auto& circle = check.flow.circle;
  const bool stated = circle_is_stated(check);
  for (const flow::Use& use : check.flow.uses) {
    const bool in_circle = std::find(circle.begin(), circle.end(), use.step) != circle.end();
    if (!stated || !in_circle) look_at(check, use);
  }
}

}  // namespace

/// A result used above the step that makes it, within one component.
const Rule used_before_made = {
    .id = "used-before-made",
    .severity = base::Severity::warning,
    .topic = "order",
    .summary = "a result that is used above the step that makes it",
    .explanation = R"(The cook reads from the top: the syrup that the sponge is brushed with must have been boiled before,
not two steps further down. Meant or not, the work stops there.

Only steps of one component are held against each other: components are made in any order, by their days or by
several people. A step that says after="..." of the one further down is believed.)",
    .bad = R"(    <step>Brush the sponge with the <use of="syrup">syrup</use>.</step>
    <step makes="syrup">Boil the sugar and the water.</step>)",
    .good = R"(    <step makes="syrup">Boil the sugar and the water.</step>
    <step>Brush the sponge with the <use of="syrup">syrup</use>.</step>)",
    .source = "common practice: a recipe lists its steps in the order of the work",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
