#include "core/base/says.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hair = 1;  // K
constexpr double raw_below = 55;

/// "Whisk the eggs to the ribbon, pour in the chocolate."
bool beats_first(const Check& check, const flow::Use& egg) {
  const std::string_view first = check.document.get(check.flow.steps[at(egg.step)].node, fiche::At::do_);
  const bool beats = first.starts_with("whisk") || first.starts_with("whip") || first.starts_with("beat");
  return egg.mark != fiche::none && beats &&
         base::says(words_of(check, egg.step),
                    {"ribbon", "pale", "thick", "foam", "fluffy", "stiff", "peak", "mousseu", "ruban", "schaum"});
}

void look_at(Check& check, int step) {
  const FoodKinds& kinds = food_kinds(check);
  const unsigned here = kinds.steps[at(step)];
  if ((here & kind::egg) == 0 || (here & kind::chocolate) == 0) return;
  const flow::Use* chocolate = nullptr;
  bool beaten = false;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::State& state = check.states().uses[at(u)];
    const unsigned in = kinds.things[at(use.thing)];
    if (!is_told(use)) continue;
    if ((in & kind::chocolate) != 0 && (in & kind::egg) == 0) {
      if (state.celsius.low > figures::chocolate_onto_beaten_egg.high + hair) chocolate = &use;
    } else if ((in & kind::egg) != 0) {
      if (state.heat.celsius > raw_below) return;
      beaten = beaten || state.air == flow::Action::Air::in || beats_first(check, use);
    }
  }
  if (chocolate == nullptr || !beaten) return;
  const double celsius = check.states().uses[at(static_cast<int>(chocolate - check.flow.uses.data()))].celsius.low;
  check.say(heat_span_of(check, *chocolate),
            "melted chocolate goes onto beaten egg at " + text_of(figures::chocolate_onto_egg) + ", at " +
                degrees(figures::chocolate_onto_beaten_egg.high) + " at the most; this is at " + degrees(celsius),
            "let it cool to 45 °C, and to 40 °C where there is little egg: hotter, it takes the air out and may set the egg");
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & kind::egg) == 0 || (all & kind::chocolate) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Chocolate at 65 °C onto beaten egg.
const Rule chocolate_hot_onto_egg = {
    .id = "chocolate-hot-onto-egg",
    .severity = base::Severity::advice,
    .topic = "temperature",
    .summary = "melted chocolate that goes onto beaten egg hotter than usual",
    .explanation = R"(Careful practice puts melted chocolate, with or without butter, onto egg at 35 to 40 °C; into
beaten egg it usually goes at 45, at 50 °C at the most. Above, it takes the air out of the foam and may set the egg at
the edge. It is advice: a large foam takes more.

Said where the chocolate's temperature is known, the egg is raw, and it has been beaten.)",
    .bad = R"(    <ingredient id="chocolate" food="chocolate-dark-60" prep="melted" at="65 °C">200 g</ingredient>
    <ingredient id="eggs" food="egg-whole">200 g</ingredient>
    <ingredient id="sugar" food="sugar-white">80 g</ingredient>
    <step do="whisk" makes="foam">Whisk the <use of="eggs">eggs</use> and <use of="sugar">sugar</use> to the ribbon.</step>
    <step do="fold">Fold the <use of="chocolate">chocolate</use> into the <use of="foam">foam</use>.</step>)",
    .good = R"(    <ingredient id="chocolate" food="chocolate-dark-60" prep="melted" at="45 °C">200 g</ingredient>
    <ingredient id="eggs" food="egg-whole">200 g</ingredient>
    <ingredient id="sugar" food="sugar-white">80 g</ingredient>
    <step do="whisk" makes="foam">Whisk the <use of="eggs">eggs</use> and <use of="sugar">sugar</use> to the ribbon.</step>
    <step do="fold">Fold the <use of="chocolate">chocolate</use> into the <use of="foam">foam</use>.</step>)",
    .source = "common practice, no source: 35 to 40 °C in careful practice, up to 45 to 50 °C into beaten egg",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
