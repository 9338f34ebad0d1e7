#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double margin = 3;  // K: charts, and what it comes up by out of the oven

/// Egg set in milk or cream, and nothing else that would hold it.
bool is_custard(const Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  const unsigned may_be = kind::egg | kind::milk | kind::cream | kind::sugar | kind::plain | kind::acid;
  if ((kinds & ~may_be) != 0 || (kinds & (kind::yolk | kind::whole_egg)) == 0 || (kinds & (kind::milk | kind::cream)) == 0)
    return false;
  const auto egg = share_of_kinds(check, step, kind::egg), milk = share_of_kinds(check, step, kind::milk | kind::cream);
  return egg && milk && milk->low >= egg->high;
}

void look_at(Check& check, int step) {
  if ((food_kinds(check).steps[at(step)] & kind::egg) == 0) return;
  const StatedHeat* core = nullptr;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    const bool inside =
        heat.el == El::food_temp && heat.low && heat.high && check.document.get(heat.statement->node, At::place) != "surface";
    if (inside && *heat.high > 40 && !says_cooling(heat.before)) core = &heat;
  }
  if (core == nullptr || !does(check, step, {"bake", "steam", "poach", "cook"}) || heats_in_the_pan(check, step)) return;
  const TradeFigure& usual = figures::baked_custard_core;
  const bool hot = *core->low > usual.high + margin, cold = *core->high < usual.low - margin;
  if ((!hot && !cold) || !is_custard(check, step)) return;
  if (cold && check.document.find(core->statement->node, At::for_) != fiche::none) return;
  check.say(core->statement->where,
            "a baked custard is set at " + text_of(usual) + " inside, and this says " + said(*core) +
                (hot ? ": it weeps and is full of holes" : ": it runs"),
            hot ? "take it out when the middle still trembles, at 80–84 °C"
                : "leave it until the middle trembles as one, at 80–84 °C");
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & kind::egg) == 0 || (all & (kind::milk | kind::cream)) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// A baked custard to a core of 96 °C.
const Rule baked_custard_off_its_heat = {
    .id = "baked-custard-off-its-heat",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a custard baked to a core at which it runs, or weeps",
    .explanation = R"(Egg in milk or cream that nobody stirs sets to a tender jelly: creams at 80 to 83 °C in the
middle, flans up to 88. Beyond, its proteins draw together, press the water out and leave holes; below, it runs. Said
of egg with milk or cream, sugar and flavour alone; with flour, starch, cheese or chocolate it stands more, and a low
figure that is held for a time is let be.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">120 g</ingredient>
    <ingredient id="sugar" food="sugar-white">90 g</ingredient>
    <step do="mix" makes="mix">Stir the <use of="cream">cream</use>, <use of="yolks">yolks</use> and <use of="sugar">sugar</use>.</step>
    <step do="bake" on="oven">Bake the <use of="mix">mix</use> <length>2 cm</length> deep in dishes at
      <oven-temp mode="static">110 °C</oven-temp> for <time>40 to 50 min</time> to a core of
      <food-temp place="core">96 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">120 g</ingredient>
    <ingredient id="sugar" food="sugar-white">90 g</ingredient>
    <step do="mix" makes="mix">Stir the <use of="cream">cream</use>, <use of="yolks">yolks</use> and <use of="sugar">sugar</use>.</step>
    <step do="bake" on="oven">Bake the <use of="mix">mix</use> <length>2 cm</length> deep in dishes at
      <oven-temp mode="static">110 °C</oven-temp> for <time>40 to 50 min</time> to a core of
      <food-temp place="core">82 °C</food-temp>.</step>)",
    .source = "common practice: crème brûlée 80 to 83 °C, flans and tarts to 88",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
