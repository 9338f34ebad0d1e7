#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double frozen = -4;   // °C: a warm glaze sets on it before it is through
constexpr double set = 15;      // °C: what is set with gelatine is colder
constexpr double spare = 8;     // K above where it melts: a thin glaze cools as it runs
constexpr double thick = 0.25;  // of what is below: a thin coat cools before it melts anything

void look_at(Check& check, int step) {
  const FoodKinds& kinds = food_kinds(check);
  if ((kinds.steps[at(step)] & kind::any_gelatine) == 0 || check.flow.steps[at(step)].takes.size() < 2) return;
  if (!does(check, step, {"pour", "glaze", "spread", "top", "cover", "coat", "assemble", "fill"}) ||
      does(check, step, {"serve", "plate", "finish", "garnish"}))
    return;
  const flow::Use *below = nullptr, *above = nullptr;
  const flow::State *cold = nullptr, *hot = nullptr;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::State& state = check.states().uses[at(u)];
    if (!is_told(use) || check.flow.things[at(use.thing)].maker < 0) continue;
    if ((kinds.things[at(use.thing)] & kind::any_gelatine) != 0 && state.celsius.high <= set && state.celsius.low > frozen) {
      below = &use;
      cold = &state;
    } else if (state.celsius.low > figures::gelatine_melts.high + spare) {
      above = &use;
      hot = &state;
    }
  }
  if (below == nullptr || above == nullptr) return;
  if (hot->grams && cold->grams && hot->grams->high < thick * cold->grams->low) return;
  check.say(heat_span_of(check, *above),
            "the " + name_of(check, *above) + " goes on at " + degrees(hot->celsius.low) + ", and the " +
                name_of(check, *below) + " below is set with gelatine, which melts at " + text_of(figures::gelatine_melts),
            "let it cool to 30 °C, or freeze what is below first");
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::any_gelatine) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Hot jelly poured over a set cream.
const Rule layer_melts_below = {
    .id = "layer-melts-below",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a layer that goes on hot enough to melt the one below it",
    .explanation = R"(What is set with gelatine melts between 25 and 35 °C. A jelly poured over a set cream at 60 °C
digs itself in, and the two layers become one. A warm glaze on a frozen cake is meant, and so is syrup on a sponge.

Said where both temperatures are known: below set with gelatine, chilled and not frozen, above more than 8 K hotter
than gelatine melts and no thin coat: a quarter of what is below, at least. Not for a sauce poured as it is served.)",
    .bad = R"(    <ingredient id="cream" food="cream-35" at="60 °C">500 g</ingredient>
    <ingredient id="juice" food="apple-juice">300 g</ingredient>
    <ingredient id="mass" food="gelatine-mass">60 g</ingredient>
    <step do="dissolve chill" makes="set-cream">Dissolve the <use of="mass">gelatine</use> in the <use of="cream">cream</use>, pour into glasses and chill
      to <food-temp>4 °C</food-temp>.</step>
    <step do="heat" on="hob" makes="hot-juice">Heat the <use of="juice">juice</use> to <food-temp>70 °C</food-temp>.</step>
    <step do="pour">Pour the <use of="hot-juice">juice</use> over the <use of="set-cream">cream</use>.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35" at="60 °C">500 g</ingredient>
    <ingredient id="juice" food="apple-juice">300 g</ingredient>
    <ingredient id="mass" food="gelatine-mass">60 g</ingredient>
    <step do="dissolve chill" makes="set-cream">Dissolve the <use of="mass">gelatine</use> in the <use of="cream">cream</use>, pour into glasses and chill
      to <food-temp>4 °C</food-temp>.</step>
    <step do="pour">Pour the <use of="juice" at="28 °C">juice</use> over the <use of="set-cream">cream</use>.</step>)",
    .source = "gelatin manufacturer's text on gel strength: table gels melt at 25 to 35 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
