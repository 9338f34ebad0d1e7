#include "core/rules/foam.h"
#include "core/rules/folding.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Where the base's temperature is asked for: in a gate of the step, else at its mark, else at the foam's.
base::Span place_of(const Check& check, int step, const flow::Use& base, const flow::Use& foam) {
  for (const fiche::Statement& statement : check.fiche.statements) {
    const fiche::Node around = check.document.parent(statement.node);
    const bool gate = check.document.el(statement.node) == fiche::El::food_temp && check.document.el(around) == fiche::El::gate;
    if (gate && check.document.parent(around) == check.flow.steps[at(step)].node) return statement.where;
  }
  return base.mark == fiche::none ? span_of(check, foam) : heat_span_of(check, base);
}

/// "Cool to 28 °C and fold in the cream": the last figure before the foam takes the place of how it came in.
flow::Range at_the_folding(const Check& check, int step, const flow::Use& base, const flow::Use& foam) {
  const flow::State& state = check.states().uses[at(static_cast<int>(&base - check.flow.uses.data()))];
  flow::Range celsius = state.celsius;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    const bool before = foam.mark != fiche::none && heat.statement->node < foam.mark &&
                        (base.mark == fiche::none || heat.statement->node > base.mark);
    if (heat.el == fiche::El::food_temp && heat.low && heat.high && before && !is_of_a_use(check, step, heat))
      celsius = {*heat.low, *heat.high};
  }
  return celsius;
}

void look_at(Check& check, int step) {
  const FoodKinds& kinds = food_kinds(check);
  if ((kinds.steps[at(step)] & folded_into) == 0 || !does(check, step, {"fold"})) return;
  const flow::Use* base = nullptr;
  const flow::Use* foam = nullptr;
  unsigned foam_kinds = 0;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if (use.instead) continue;
    if (!is_told(use)) return;
    const flow::State& state = check.states().uses[at(u)];
    const unsigned in = kinds.things[at(use.thing)];
    if (is_foam(check, use, state)) {
      foam = &use;
      foam_kinds |= in;
    } else if ((in & folded_into) != 0) {
      if (base != nullptr) return;
      base = &use;
    }
  }
  if (base == nullptr || foam == nullptr || heated_next(check, step) || does(check, step, {"bake"})) return;
  const auto window = folding_window(check, step, kinds.things[at(base->thing)], foam_kinds);
  if (!window) return;
  const flow::Range celsius = at_the_folding(check, step, *base, *foam);
  const bool hot = celsius.low > window->high, cold = celsius.high < window->low;
  const bool said_of_egg =
      hot && (foam_kinds & kind::egg) != 0 && (kinds.things[at(base->thing)] & kind::chocolate) != 0;  // chocolate-hot-onto-egg
  if ((!hot && !cold) || said_of_egg) return;
  check.say(place_of(check, step, *base, *foam),
            window->said + "; " + (base->mark == fiche::none ? "what it goes into" : "the " + name_of(check, *base)) +
                " is at " + degrees(hot ? celsius.low : celsius.high) + ": " + std::string(hot ? window->hot : window->cold),
            hot ? "let it cool to " + degrees(window->usual.high) +
                      " first, stirring, and fold in a third of the foam before the rest"
                : "warm it over a bath to " + degrees(window->usual.low) + ", stirring, until it runs smooth, and fold then");
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & folded_into) == 0 || (all & (kind::cream | kind::egg)) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Whipped cream folded into chocolate at 65 °C, or into a jelly that has set.
const Rule base_off_its_folding_heat = {
    .id = "base-off-its-folding-heat",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a foam folded into a base that is too hot or too cold for it",
    .explanation = R"(A mousse stands by the air in it, and the base decides whether that stays. Chocolate takes
whipped cream or white at about 35 to 45 °C: hotter, the foam melts, colder, the cocoa butter sets in flakes. A base
with gelatine is folded cooler, near setting, at about 20 to 30 °C; from the fridge it is a jelly already. Pastry
cream goes cold under whipped cream.

Said where the base's temperature is known, with 5 to 8 K to spare on the warm side and 10 on the cold one of
gelatine. Not where it is baked next, as a soufflé is.)",
    .bad = R"(    <ingredient id="chocolate" food="chocolate-dark-60" prep="melted" at="65 °C">200 g</ingredient>
    <ingredient id="cream" food="cream-35" prep="whipped soft">300 g</ingredient>
    <step do="fold">Fold the <use of="cream">cream</use> into the <use of="chocolate">chocolate</use>.</step>)",
    .good = R"(    <ingredient id="chocolate" food="chocolate-dark-60" prep="melted" at="42 °C">200 g</ingredient>
    <ingredient id="cream" food="cream-35" prep="whipped soft">300 g</ingredient>
    <step do="fold">Fold the <use of="cream">cream</use> into the <use of="chocolate">chocolate</use>.</step>)",
    .source = "common practice: chocolate 35 to 45 °C, gelatine bases near setting",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
