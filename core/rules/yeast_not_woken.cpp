#include "core/base/says.h"
#include "core/rules/contents.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Statement;

constexpr double margin = 4;  // K: makers' packs go from 35 to 46 °C

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool is_liquid(const food::Food* food) {
  return food != nullptr && (food->role == food::Role::liquid || food->role == food::Role::dairy);
}

/// The temperature stated of a liquid as it is taken: at its mark, on its line, or in the step.
const Statement* stated_of(const Check& check, const flow::Use& use) {
  const flow::Thing& thing = check.flow.things[at(use.thing)];
  if (use.mark != fiche::none) {
    if (const Statement* mark = check.fiche.statement(use.mark, At::at)) return mark;
  }
  return check.fiche.statement(thing.node, At::at);
}

void look_at(Check& check, int step) {
  const flow::Step& here = check.flow.steps[at(step)];
  bool dry = false;
  const Statement* stated = nullptr;
  for (const int u : here.takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::Thing& thing = check.flow.things[at(use.thing)];
    if (thing.ingredient < 0) {
      if (use.how == flow::Use::How::carried) return;  // more is in it than the two
      continue;
    }
    const food::Food* food = check.fiche.ingredients[at(thing.ingredient)].food;
    if (food != nullptr && food->role == food::Role::flour) return;
    dry = dry || general_id(check, food) == "yeast-active-dry";
    if (is_liquid(food) && stated == nullptr) stated = stated_of(check, use);
  }
  if (!dry) return;
  const std::string words = own_sentence(check, here.node) + " " + std::string(check.document.get(here.node, At::do_));
  if (!base::says(words, {"dissolv", "sprinkl", "soak", "foam", "bloom", "wake", "activat", "délay", "dissou", "réhydrat",
                          "auflös", "disolv"}))
    return;
  for (const StatedHeat& heat : stated_heats(check, here.node)) {
    if (heat.el == fiche::El::food_temp && stated == nullptr) stated = heat.statement;
  }
  if (stated == nullptr) return;
  const auto low = low_of(*stated);
  const auto high = high_of(*stated);
  const bool cold = high && *high < figures::yeast_wakes.low - margin;
  const bool hot = low && *low > figures::yeast_wakes.high + margin && *low < figures::yeast_dies.low;
  if (!low && high && *high >= figures::yeast_dies.low) {
    check.say(
        stated->where,
        "active dry yeast wakes at 38 to 43 °C, and \"" + stated->text + "\" lets the liquid kill it: it dies from 55 °C on",
        "say at most 43 °C");
    return;
  }
  if (!cold && !hot) return;
  check.say(stated->where, "active dry yeast wakes at 38 to 43 °C, and this is at " + stated->text,
            cold ? "warm the liquid, or take instant yeast, which needs no waking"
                 : "let it cool: some of the yeast dies before it wakes");
}

void run(Check& check) {
  bool any = false;
  for (const fiche::Ingredient& line : check.fiche.ingredients) any = any || general_id(check, line.food) == "yeast-active-dry";
  if (!any) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Active dry yeast dissolved in something too cold or too hot for it.
const Rule yeast_not_woken = {
    .id = "yeast-not-woken",
    .severity = base::Severity::advice,
    .topic = "temperature",
    .summary = "active dry yeast dissolved in something too cold or too hot to wake it",
    .explanation =
        R"(The dead cells round each grain of active dry yeast dissolve in water of 38 to 43 °C; in cold water what is
inside leaks out, and the dough rises slowly and stays slack. Fresh and instant yeast do not mind.

Held against is the temperature stated of the liquid, with a margin of 4 K, in a step that dissolves the yeast alone: not
one that has flour in it; and a ceiling ("at most 65 °C") that lets it be too hot. From 55 °C on yeast-killed speaks.)",
    .bad = R"(    <ingredient id="yeast" food="yeast-active-dry">8 g</ingredient>
    <ingredient id="water" food="water" at="20 °C">100 g</ingredient>
    <step>Dissolve the <use of="yeast">yeast</use> in the <use of="water">water</use>.</step>)",
    .good = R"(    <ingredient id="yeast" food="yeast-active-dry">8 g</ingredient>
    <ingredient id="water" food="water" at="40 °C">100 g</ingredient>
    <step>Dissolve the <use of="yeast">yeast</use> in the <use of="water">water</use>.</step>)",
    .source = "common practice: 38 to 43 °C for active dry yeast",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
