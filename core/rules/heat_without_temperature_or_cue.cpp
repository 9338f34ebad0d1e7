#include "core/rules/heating.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

bool says_enough(const Check& check, const fiche::Step& step, const Heating& heating) {
  const Cues cues = cues_of(check.document, step.node);
  if (cues.hot_place) return true;
  if (heating.need == HeatNeed::oven) return set_before(check, step) || names_a_heat(check, step);
  if (cues.cue || cues.food_temp || cues.gate_on_use || names_an_end(check, step)) return true;
  if (heating.need == HeatNeed::time) return cues.time || cues.reduced;
  return names_a_heat(check, step) || (heating.depth_decides && set_before(check, step));
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const fiche::Step& step : check.fiche.steps) {
    const Heating heating = heating_of(check, step);
    if (heating.need == HeatNeed::none || says_enough(check, step, heating)) continue;
    const base::Span where = check.document.head_span(step.node);
    const std::string word = quoted(heating.word);
    if (heating.need == HeatNeed::oven) {
      say_to_share(check, where, word + " in an oven, and nothing says how hot the oven is",
                   "add the oven's temperature as <oven-temp mode=\"fan\">…</oven-temp>");
    } else if (heating.need == HeatNeed::time) {
      say_to_share(check, where, word + ", and nothing says for how long or until what is seen",
                   "add <time> or <until>, or the temperature it comes to as <food-temp>");
    } else {
      say_to_share(check, where, word + ", and nothing says how hot or until what is seen",
                   "add <food-temp>, <medium-temp>, the heat (\"low heat\") or <until>");
    }
  }
}

}  // namespace

/// A step that cooks with heat and says neither how hot nor what shows that it is enough.
const Rule heat_without_temperature_or_cue = {
    .id = "heat-without-temperature-or-cue",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "a step cooks with heat, and nothing says how hot or until when",
    .explanation = R"("Cook the cream" is enough for the one who made it yesterday. Whoever makes it elsewhere needs a figure or
something to look for: how hot the oven or the oil is, what the food itself comes to, or what is seen when it is enough.

What is asked depends on the word. Baking and roasting need the oven's figure, in this step or before in the component.
Deep-frying, poaching, cooking and warming need a temperature, a heat ("low heat"), or a cue. Where boiling or sizzling says how
hot it is (simmer, braise, fry, sweat), a time or a cue will do. Boiling, melting and scalding need nothing: the word
says it. A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="pears" food="pear" prep="peeled">600 g</ingredient>
    <step do="poach" on="hob">Poach the <use of="pears">pears</use> in their juice for <time>15 to 25 minutes</time>.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="pears" food="pear" prep="peeled">600 g</ingredient>
    <step do="poach" on="hob">Poach the <use of="pears">pears</use> in their juice at <food-temp>85–90 °C</food-temp>,
      <until>until a knife goes in with no push</until>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
