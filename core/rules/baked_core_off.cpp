#include "core/physics/boiling_point.h"
#include "core/rules/contents.h"
#include "core/rules/heated.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr double cake_margin = 4;   // K: the thermometer, and cakes that are left moist
constexpr double bread_margin = 7;  // K: charts in °F print 180 to 190 for rich doughs

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Filled with what has a core of its own to mind, or meant to stay soft in the middle.
bool has_its_own_core(const Contents& contents, std::string_view words) {
  return contents.has(food::Role::meat) || contents.has(food::Role::fish) || contents.has(food::Role::vegetable) ||
         has_phrase(words,
                    "cheesecake|cheesecakes|fondant|fondants|molten|lava|brownie|brownies|custard|flan|clafoutis|quiche|"
                    "coulant|mi-cuit|financier|pudding|"
                    "gooey|far|canelé|basque");
}

bool is_cake(const Contents& contents, std::string_view words) {
  return contents.has(food::Role::flour) && contents.has(food::Role::egg) &&
         has_phrase(words,
                    "cake|cakes|sponge|genoise|génoise|choux|muffins|muffin|loaf "
                    "cake|biscuit|madeleines|kuchen|biskuit|bizcocho|gâteau");
}

void look_at(Check& check, int step, double lower) {
  const flow::Step& here = check.flow.steps[at(step)];
  for (const StatedHeat& heat : stated_heats(check, here.node)) {
    if (heat.el != fiche::El::food_temp || !heat.low || !heat.high) continue;
    const std::string_view place = check.document.get(heat.statement->node, fiche::At::place);
    if (place == "surface" || (place.empty() && !says_core(heat.before))) continue;
    const Contents contents = contents_of(check, step);
    const std::string words = titles_of(check, step) + " " + own_sentence(check, here.node);
    if (has_its_own_core(contents, words)) return;
    const bool bread = contents.has(food::Role::yeast) && contents.has(food::Role::flour);
    if (!bread && !is_cake(contents, words)) return;
    const TradeFigure& figure = bread ? figures::bread_core : figures::cake_core;
    if (*heat.high >= figure.low - lower - (bread ? bread_margin : cake_margin)) continue;
    check.say(heat.statement->where,
              "a core of " + heat.statement->text + " is raw in the middle: " +
                  (bread ? "bread is baked at 88 °C for rich doughs, up to 99 °C for lean ones"
                         : "cake and choux are baked at 93 to 99 °C"),
              "bake on until the core is there, and cover it if the crust is dark enough");
    return;
  }
}

void run(Check& check) {
  const auto& height = check.kitchen.altitude_m;
  const double lower = height ? physics::boiling_point(0) - physics::boiling_point(height->approximate()) : 0;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    if (does(check, step, {"bake", "bake-blind"})) look_at(check, step, lower);
  }
}

}  // namespace

/// Bread or cake that is to leave the oven with a core that is still dough.
const Rule baked_core_off = {
    .id = "baked-core-off",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "bread or cake with a core temperature at which it is still raw",
    .explanation =
        R"(Crumb sets when its starch has swollen and its protein has set: bread at 88 °C (rich doughs) to 99 °C (lean
ones) in the core, cake, sponge and choux at 93 to 99 °C. At 78 °C the middle is paste and falls in.

Held against is a core temperature stated in a step that bakes a yeast dough, or what a title or the sentence calls a cake,
sponge or choux and has flour and egg in it, with a margin (7 K for bread, 4 K for cake) and what the kitchen's height takes
off. Molten cakes, brownies, cheesecakes, custards and what holds meat, fish or vegetables are let be.)",
    .bad = R"(    <ingredient id="dough" food="flour-wheat-white">1 kg</ingredient>
    <ingredient id="water" food="water">620 g</ingredient>
    <ingredient id="yeast" food="yeast-fresh">20 g</ingredient>
    <step do="knead">Knead the <use of="dough">flour</use>, <use of="water">water</use> and <use of="yeast">yeast</use>.</step>
    <step do="bake">Bake at <oven-temp mode="deck">230 °C</oven-temp> to a core of <food-temp place="core">78 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="dough" food="flour-wheat-white">1 kg</ingredient>
    <ingredient id="water" food="water">620 g</ingredient>
    <ingredient id="yeast" food="yeast-fresh">20 g</ingredient>
    <step do="knead">Knead the <use of="dough">flour</use>, <use of="water">water</use> and <use of="yeast">yeast</use>.</step>
    <step do="bake">Bake at <oven-temp mode="deck">230 °C</oven-temp> to a core of <food-temp place="core">97 °C</food-temp>.</step>)",
    .source = "common practice: bread 88 to 99 °C, cake 93 to 99 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
