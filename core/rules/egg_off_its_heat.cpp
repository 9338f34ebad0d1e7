#include "core/base/utf8.h"

#include "core/rules/egg_way.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hair = 2;        // K: thermometers, and a pan that carries over
constexpr double not_begun = 69;  // °C: an American custard stops at 160 °F, 71 °C
constexpr double warming = 50;    // °C: below, the figure is of something else than cooking
constexpr double boiled_sugar = 105;

/// Whether the egg is in it where the figure stands.
bool egg_is_in(const Check& check, int step, fiche::Node mark) {
  const FoodKinds& kinds = food_kinds(check);
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if ((kinds.things[at(use.thing)] & kind::egg) == 0) continue;
    return is_told(use) && (use.mark == fiche::none || use.mark < mark);
  }
  return false;
}

bool is_held(const Check& check, int step, const fiche::Statement& figure) {
  if (check.document.find(figure.node, At::for_) != fiche::none) return true;
  const fiche::Node node = check.flow.steps[at(step)].node;
  for (const fiche::Statement& other : check.fiche.statements) {
    if (check.document.el(other.node) == El::time && check.document.parent(other.node) == node) return true;
  }
  return false;
}

/// "Stir to 84 °C", with no word of the heat.
bool is_stirred_to(const Check& check, int step, const StatedHeat& heat) {
  if (!does(check, step, {"stir", "whisk", "pour", "add", "mix", "combine"}) || may_heat(check, step)) return false;
  const std::string_view words = base::trimmed(heat.before);
  return words.ends_with(" to") || words.ends_with("jusqu'à") || words.ends_with(" auf") || words.ends_with(" hasta");
}

void judge(Check& check, int step, const StatedHeat& heat, const EggWay& way) {
  const std::string name(way.name);
  if (!way.over.empty() && *heat.low > way.figure->high + hair) {
    check.say(heat.statement->where,
              name + " " + std::string(way.over) + " " + degrees(way.figure->high) + ", and this takes it to " + said(heat),
              std::string(way.way_out));
  } else if (!way.under.empty() && *heat.high < not_begun && !is_held(check, step, *heat.statement) &&
             !heated_next(check, step)) {
    check.say(heat.statement->where,
              name + " cooks at " + text_of(*way.figure) + " and " + std::string(way.under) + " " + said(heat),
              std::string(way.way_out));
  }
}

void look_at(Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  if ((kinds & kind::egg) == 0) return;
  const StatedHeat* hottest = nullptr;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    const bool of_food =
        heat.el == El::food_temp && heat.low && heat.high && check.document.get(heat.statement->node, At::place) != "surface";
    if (!of_food || *heat.high < warming || *heat.low > boiled_sugar || says_cooling(heat.before)) continue;
    if (!egg_is_in(check, step, heat.statement->node) || is_of_a_use(check, step, heat)) continue;
    if (hottest == nullptr || *heat.high > *hottest->high) hottest = &heat;
  }
  if (hottest == nullptr || !(heats_in_the_pan(check, step) || is_stirred_to(check, step, *hottest))) return;
  if (const EggWay* way = egg_way_of(check, step)) judge(check, step, *hottest, *way);
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::egg) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// A custard taken to 92 °C, or to 65.
const Rule egg_off_its_heat = {
    .id = "egg-off-its-heat",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "egg cooked in the pan beyond where it curdles, or not to where it thickens",
    .explanation = R"(Egg alone sets early: the white from 63 °C, the yolk at 70, both together at 73. Milk and sugar
part its proteins from each other, so that a custard thickens at 82 to 85 °C and curdles a little above. Acid and
sugar keep a curd smooth further up, some bring it to the boil; yolk with butter alone takes 60 to 70 °C.

Held against it is the hottest figure of a step that stirs the egg in pan or bath, by what is in it: milk or cream,
juice and sugar, butter or nothing, sugar. Silent where starch, flour, chocolate or cheese hold it together, in the
oven, and below where the mix is held for a time, as for pasteurising. Raw and lightly cooked egg has rules of its own
where you work.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">90 g</ingredient>
    <step do="cook" on="hob">Pour the boiled <use of="milk">milk</use> over the <use of="yolks">yolks</use> and
      <use of="sugar">sugar</use>, whisking, and stir to <food-temp>92 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">90 g</ingredient>
    <step do="cook" on="hob">Pour the boiled <use of="milk">milk</use> over the <use of="yolks">yolks</use> and
      <use of="sugar">sugar</use>, whisking, and stir to <food-temp>82–84 °C</food-temp>.</step>)",
    .source = "common practice: crème anglaise 82 to 85 °C; H. McGee, On Food and Cooking: where egg sets",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
