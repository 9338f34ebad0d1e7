#include <cmath>

#include "core/base/utf8.h"
#include "core/physics/boiling_point.h"
#include "core/rules/contents.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

// K above boiling water: softer and firmer sets are cooked on purpose (common practice: 103 to 106 °C at the sea).
constexpr double softest = 2.5, firmest = 7.5;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// By the component's title or the sentence; by the fiche's only where it has no other component.
bool is_called_jam(const Check& check, int step) {
  const flow::Step& here = check.flow.steps[at(step)];
  std::string words = own_sentence(check, here.node);
  if (check.fiche.components.size() == 1) words += " " + titles_of(check, step);
  if (here.component != fiche::none) words += " " + base::lower(check.document.get(here.component, fiche::At::title));
  return has_phrase(words, "jam|jams|marmalade|marmelade|konfitüre|confiture|confitures|mermelada");
}

/// Fruit itself: the juice of a lemon is in many a syrup.
bool has_fruit(const Contents& contents) {
  for (const Part& part : contents.parts) {
    if (part.food != nullptr && part.food->role == food::Role::fruit && part.food->id.find("juice") == std::string_view::npos)
      return true;
  }
  return false;
}

/// Whether fruit goes in only behind the figure: sugar that is cooked first, and the fruit into it.
bool fruit_comes_after(const Check& check, int step, fiche::Node figure) {
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::Thing& thing = check.flow.things[at(use.thing)];
    const food::Food* food = thing.ingredient < 0 ? nullptr : check.fiche.ingredients[at(thing.ingredient)].food;
    if (food != nullptr && food->role == food::Role::fruit && use.mark != fiche::none && use.mark > figure) return true;
  }
  return false;
}

bool has_pectin(const Contents& contents) {
  for (const Part& part : contents.parts) {
    if (part.food == nullptr || part.food->role == food::Role::setting) return true;
  }
  return false;
}

/// The hottest temperature of the food in a step that cooks: what it is cooked to, unless that lies below the boil.
const StatedHeat* cooked_to(const Check& check, fiche::Node step, double boiling) {
  const StatedHeat* found = nullptr;
  for (const StatedHeat& heat : stated_heats(check, step)) {
    if (heat.el != fiche::El::food_temp || !heat.low || !heat.high || *heat.high < boiling || *heat.low > 130) continue;
    if (found == nullptr || *heat.high > *found->high) found = &heat;
  }
  return found;
}

void look_at(Check& check, int step, double boiling) {
  const fiche::Node node = check.flow.steps[at(step)].node;
  const StatedHeat* heat = cooked_to(check, node, boiling);
  if (heat == nullptr || !is_called_jam(check, step)) return;
  const Contents contents = contents_of(check, step);
  if (!has_fruit(contents) || !contents.has(food::Role::sugar)) return;
  const bool runny = *heat->high < boiling + softest && !has_pectin(contents);
  const bool stiff = *heat->low > boiling + firmest;
  if ((!runny && !stiff) || fruit_comes_after(check, step, heat->statement->node)) return;
  const auto tenths = std::lround(10 * (boiling + figures::jam_sets_above_boil.low));
  const std::string sets = std::to_string(tenths / 10) + (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10)) + " °C";
  const std::string here = check.kitchen.altitude_m
                               ? " at this kitchen's " + std::to_string(check.kitchen.altitude_m->nearest()) + " m"
                               : " at the sea";
  check.say(heat->statement->where,
            "jam sets at about " + sets + here + "; at " + heat->statement->text +
                (runny ? " it stays runny" : " it turns to toffee"),
            runny ? "cook on to the setting point and try a drop on a cold plate, or set it with pectin"
                  : "stop at the setting point: a drop on a cold plate wrinkles");
}

void run(Check& check) {
  const double boiling = physics::boiling_point(check.kitchen.altitude_m ? check.kitchen.altitude_m->approximate() : 0);
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step, boiling);
}

}  // namespace

/// Jam cooked to a temperature at which it does not set, or goes beyond setting, at the kitchen's height.
const Rule jam_off_its_setting_point = {
    .id = "jam-off-its-setting-point",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "jam cooked to where it does not set yet, or to where it is toffee, at the kitchen's height",
    .explanation =
        R"(Jam sets when about 65 % of it is sugar and what was dissolved in the fruit: it then boils 4.5 K above water,
at 104.5 °C at the sea and at 98 °C at 2000 m. Below 60 % it stays runny and does not keep outside the fridge; 8 K above
water it is a boiled sweet.

Held against is the hottest figure of a step that cooks fruit with sugar where a title or the sentence says jam or marmalade; from 2.5 to
7.5 K above boiling water it is taken to be meant. With pectin or another setting agent in it a lower figure is let be.)",
    .bad = R"(    <ingredient id="plums" food="plum">1 kg</ingredient>
    <ingredient id="sugar" food="sugar-white">800 g</ingredient>
    <step do="boil">Boil the <use of="plums">plums</use> and <use of="sugar">sugar</use> to jam, to
      <food-temp>101 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="plums" food="plum">1 kg</ingredient>
    <ingredient id="sugar" food="sugar-white">800 g</ingredient>
    <step do="boil">Boil the <use of="plums">plums</use> and <use of="sugar">sugar</use> to jam, to
      <food-temp>104.5 °C</food-temp>.</step>)",
    .source = "common practice: setting point 104.5 °C at sea level; ISO 2533 and IAPWS-IF97 for the height",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
