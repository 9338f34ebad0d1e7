#include <algorithm>

#include "core/rules/circle.h"
#include "core/rules/registry.h"
#include "core/rules/step_name.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  if (!circle_is_stated(check)) return;
  std::vector<int> circle = check.flow.circle;
  std::rotate(circle.begin(), std::min_element(circle.begin(), circle.end()), circle.end());
  const auto node = [&](int step) { return check.flow.steps[static_cast<std::size_t>(step)].node; };
  const auto name = [&](int step) { return step_name(check.document, node(step)); };
  std::string message = name(circle.front()) + " waits for ";
  if (circle.size() == 1) {
    message += "itself";
  } else {
    for (std::size_t i = 1; i < circle.size(); ++i) message += name(circle[i]) + ", which waits for ";
    message += "the first";
  }
  base::Finding& finding = check.say(check.document.head_span(node(circle.front())), std::move(message),
                                     "look at what they use, make and come after: one of them must begin with what is there");
  for (std::size_t i = 1; i < circle.size(); ++i) {
    finding.related.push_back({check.document.head_span(node(circle[i])), "one of the circle", {}, {}, {}});
  }
}

}  // namespace

/// Steps that wait for each other, so that none can begin.
const Rule circular_steps = {
    .id = "circular-steps",
    .severity = base::Severity::error,
    .topic = "order",
    .summary = "steps that wait for each other, so that none can begin",
    .explanation = R"(A step that uses what a later one makes, which in turn needs the first: nobody can start. Mostly a name
in use or after is that of the wrong step.

What is fed from its own last batch, a starter or a master stock, is an ingredient that is bought or kept
(ingredient with result), not a step that waits for its own end.)",
    .bad = R"(    <step makes="glaze">Melt the <use of="trimmings">trimmings</use>.</step>
    <step makes="trimmings">Glaze the cake with the <use of="glaze">glaze</use>, keep what runs off.</step>)",
    .good = R"(    <step makes="glaze">Melt the glaze.</step>
    <step>Coat the cake with the <use of="glaze">glaze</use>.</step>)",
    .source = "the document's specification (schemas/README.md, what a step waits for)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
