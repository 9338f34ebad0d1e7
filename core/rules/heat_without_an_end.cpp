#include "core/rules/heating.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

bool says_an_end(const Check& check, const fiche::Step& step) {
  const Cues cues = cues_of(check.document, step.node);
  return cues.cue || cues.food_temp || cues.time || cues.reduced || names_an_end(check, step);
}

/// The step behind it, where the same work goes on: "Turn the oven down and go on until …".
bool end_comes_next(const Check& check, std::size_t index) {
  if (index + 1 >= check.fiche.steps.size()) return false;
  const fiche::Step& next = check.fiche.steps[index + 1];
  return next.component == check.fiche.steps[index].component && says_an_end(check, next);
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (std::size_t i = 0; i < check.fiche.steps.size(); ++i) {
    const fiche::Step& step = check.fiche.steps[i];
    const Heating heating = heating_of(check, step);
    if (!heating.depth_decides || heating.need < HeatNeed::figure) continue;
    if (!cues_of(check.document, step.node).hot_place || says_an_end(check, step) || end_comes_next(check, i)) continue;
    say_to_share(check, check.document.head_span(step.node),
                 quoted(heating.word) + " says how hot, and nothing says when it is done",
                 "add what is seen, <until>, or the core as <food-temp place=\"core\">, and the usual <time> as a range");
  }
}

}  // namespace

/// A step that says how hot the oven or the oil is, and neither for how long nor until what is seen.
const Rule heat_without_an_end = {
    .id = "heat-without-an-end",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "an oven, bath or oil with a temperature, and nothing says when the food is done",
    .explanation = R"(The oven's figure says how to begin. When to stop is the other half: a colour, a feel, a core temperature, or at
the least a time. Without one the next cook opens the door and guesses.

The step behind it may say it: "turn down to 150 °C and go on until the core is at 52 °C". A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="quince" food="quince" prep="peeled, halved">1 kg</ingredient>
    <step do="roast" on="oven">Roast the <use of="quince">quinces</use> at <oven-temp mode="fan">160 °C</oven-temp>.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="quince" food="quince" prep="peeled, halved">1 kg</ingredient>
    <step do="roast" on="oven">Roast the <use of="quince">quinces</use> at <oven-temp mode="fan">160 °C</oven-temp> for
      <time>60 to 80 minutes</time>, <until>until they are pink and a skewer slides in</until>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
