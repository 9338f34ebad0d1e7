#include <algorithm>
#include <vector>

#include "core/base/says.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double slowly_from = 40;  // °C: with patience it still dissolves

bool says_melted(std::string_view words) {
  return base::says(words, {"melt", "warm", "hot", "heat", "fondu", "fond", "chaud", "tiéd", "aufgelöst", "geschmolz", "erwärm",
                            "heiß", "derret", "calent", "microwave"});
}

/// Gelatine alone, or in the water that it has soaked in.
bool is_soaked_gelatine(unsigned kinds) {
  return (kinds & kind::any_gelatine) != 0 && (kinds & ~(kind::any_gelatine | kind::plain)) == 0;
}

void look_at(Check& check, int step) {
  const FoodKinds& kinds = food_kinds(check);
  if ((kinds.steps[at(step)] & kind::any_gelatine) == 0) return;
  const flow::Use* gelatine = nullptr;
  std::vector<int> base;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::State& state = check.states().uses[at(u)];
    if (use.instead) continue;
    if (!is_told(use)) return;
    if (is_soaked_gelatine(kinds.things[at(use.thing)])) {
      if (gelatine != nullptr || state.celsius.high > figures::gelatine_melts.high) return;
      gelatine = &use;
    } else {
      base.push_back(u);
    }
  }
  if (gelatine == nullptr || base.empty() || heats(check, step)) return;
  if (does(check, step, {"soak", "bloom", "soften", "line", "brush"}) || says_melted(words_of(check, step)) ||
      heated_next(check, step))
    return;
  double warmest = check.states().uses[at(base[0])].celsius.high;  // it may go into that one first
  for (const int u : base) warmest = std::max(warmest, check.states().uses[at(u)].celsius.high);
  if (warmest >= slowly_from) return;
  check.say(span_of(check, *gelatine),
            "soaked gelatine dissolves at " + text_of(figures::gelatine_dissolves) + ", and what it goes into is at " +
                degrees(warmest) + " at the most",
            "warm a part of it to 60 °C, dissolve the gelatine in that, and stir it back");
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::any_gelatine) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Soaked gelatine stirred into a cold cream.
const Rule gelatine_not_dissolved = {
    .id = "gelatine-not-dissolved",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "soaked gelatine stirred into something too cold to dissolve it",
    .explanation = R"(Soaked gelatine dissolves in liquid of 50 to 60 °C. In a cold one it stays in threads, and what
is meant to set does not. Gelatine that has been melted first may go into something cool, a third at a time.

Said where all that it goes into is known to be below 40 °C, no word of the step melts or warms anything, and the next
step does not heat it.)",
    .bad = R"(    <ingredient id="curd" food="yogurt-whole" at="8 °C">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" prep="soaked, wrung out">8 g</ingredient>
    <step do="stir">Stir the <use of="leaf">gelatine</use> into the <use of="curd">yogurt</use>.</step>)",
    .good = R"(    <ingredient id="curd" food="yogurt-whole" at="8 °C">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" prep="soaked, wrung out">8 g</ingredient>
    <step do="stir">Melt the <use of="leaf">gelatine</use> and stir it into the <use of="curd">yogurt</use>, a spoonful at first.</step>)",
    .source = "common practice: soaked gelatine dissolves in liquid of 50 to 60 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
