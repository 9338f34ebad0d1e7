#include <algorithm>

#include "core/rules/contents.h"
#include "core/rules/heated.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr double margin = 10;  // K: a pale caramel, and a thermometer in a shallow pan

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Nothing but sugar and water: cream, butter or milk in it stop at other figures.
bool is_bare_sugar(const Contents& contents) {
  const bool bare = std::all_of(contents.parts.begin(), contents.parts.end(), [](const Part& part) {
    return part.food != nullptr && (part.food->role == food::Role::sugar || part.food->id == "water" ||
                                    part.food->role == food::Role::acid || part.food->id == "lemon-juice");
  });
  return bare && contents.has(food::Role::sugar);
}

void look_at(Check& check, int step) {
  const flow::Step& here = check.flow.steps[at(step)];
  const StatedHeat* hottest = nullptr;
  for (const StatedHeat& heat : stated_heats(check, here.node)) {
    if (heat.el == fiche::El::food_temp && heat.low && heat.high && (hottest == nullptr || *heat.high > *hottest->high))
      hottest = &heat;
  }
  if (hottest == nullptr) return;
  const bool pale = *hottest->high < figures::sugar_caramel.low - margin && does(check, step, {"caramelise", "caramelize"});
  const bool burnt = *hottest->low > figures::sugar_burns.low;
  if ((!pale && !burnt) || !is_bare_sugar(contents_of(check, step))) return;
  check.say(hottest->statement->where,
            pale ? "sugar does not colour at " + hottest->statement->text + ": caramel begins at 160 to 170 °C"
                 : "sugar at " + hottest->statement->text + " is burnt: it smokes and turns bitter from 200 °C on",
            pale ? "take it to 165 to 180 °C, by the colour wanted"
                 : "stop it at 175 to 185 °C, and mind that the pan goes on heating it");
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Bare sugar that is to caramelise below the heat where it colours, or above the one where it burns.
const Rule caramel_off_its_heat = {
    .id = "caramel-off-its-heat",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "sugar that is to caramelise colder than it colours, or hotter than it burns",
    .explanation = R"(Sugar begins to colour at 160 to 170 °C; by 200 °C it smokes and is bitter. A figure of 130 °C gives a
clear syrup that sets, one of 215 °C a pan to scrub. Caramel burns deeply and spits when liquid goes in: long sleeves, face
away.

Held against is the hottest figure of a step that cooks nothing but sugar and water; the lower bound where it caramelises,
with a margin of 10 K for pale caramel. Caramels with cream, butter or milk in them are cooked to other figures and are let be.)",
    .bad = R"(    <ingredient id="sugar" food="sugar-white">300 g</ingredient>
    <step do="caramelise">Melt the <use of="sugar">sugar</use> dry and cook it to <food-temp>125 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="sugar" food="sugar-white">300 g</ingredient>
    <step do="caramelise">Melt the <use of="sugar">sugar</use> dry and cook it to <food-temp>175 °C</food-temp>.</step>)",
    .source = "confectionery table: caramel 320 to 338 °F; burnt from 200 °C on: common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
