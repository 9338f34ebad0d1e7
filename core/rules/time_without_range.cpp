#include "core/rules/heating.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// The only time of the step's own sentence, when it is one plain figure; "about 20 min" and "at least 4 h" leave room.
const fiche::Statement* fixed_time(const Check& check, Node step) {
  const fiche::Statement* only = nullptr;
  bool several = false;
  for_each_mark(check.document, step, [&](Node mark) {
    if (check.document.el(mark) != El::time) return;
    several |= only != nullptr;
    only = check.fiche.statement(mark);
  });
  if (several || only == nullptr || !only->amount) return nullptr;
  const measure::Amount& amount = *only->amount;
  return amount.form == measure::Amount::Form::exact && !amount.about ? only : nullptr;
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const fiche::Step& step : check.fiche.steps) {
    if (!heating_of(check, step).depth_decides) continue;
    const Cues cues = cues_of(check.document, step.node);
    if (cues.cue || cues.food_temp || cues.length || names_an_end(check, step)) continue;
    const fiche::Statement* time = fixed_time(check, step.node);
    if (time == nullptr) continue;
    say_to_share(check, time->where, time->text + " flat, where the thickness of the food decides, and no cue beside it",
                 "write the range it takes (\"18 to 24 min\") and what is seen at its end with <until>, or the core temperature");
  }
}

}  // namespace

/// One fixed time for cooking that takes as long as the food is thick, with no cue and no thickness beside it.
const Rule time_without_range = {
    .id = "time-without-range",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "one fixed time where the thickness of the food decides, and no cue",
    .explanation = R"(Heat goes into food from outside, and twice as thick takes up to four times as long. A flat "20 min" for baking,
roasting, poaching, steaming or deep-frying is true of one tray in one oven. A range says how far it may differ, and a cue
says when to stop.

The rule is silent where there is a cue, a core temperature or a gate, where the thickness itself is stated, and where
the time leaves room ("about 20 min", "at least 4 h"). Boiling and simmering times are let be. A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="beets" food="beetroot" name="beetroots">1 kg</ingredient>
    <step do="roast" on="oven">Roast the <use of="beets">beetroots</use> in foil at
      <oven-temp mode="fan">170 °C</oven-temp> for <time>60 min</time>.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="beets" food="beetroot" name="beetroots">1 kg</ingredient>
    <step do="roast" on="oven">Roast the <use of="beets">beetroots</use> in foil at
      <oven-temp mode="fan">170 °C</oven-temp> for <time>50 to 75 min</time>,
      <until>until a skewer meets no resistance in the largest</until>.</step>)",
    .source = "heat conduction: time goes with the square of the thickness (Carslaw and Jaeger, Conduction of Heat in Solids, "
              "from memory)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
