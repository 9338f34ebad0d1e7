#include <cmath>

#include "core/base/utf8.h"
#include "core/physics/boiling_point.h"
#include "core/rules/contents.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;

// °C above water's boiling point. Weather shifts it by 1 K; a food with as much sugar or salt as water boils about 2 K
// higher (sucrose 50 % by mass: 102 °C, confectioners' table of 1912).
constexpr double water_margin = 1.5;
constexpr double food_margin = 2.5;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

struct Altitude {
  double boiling_c;
  std::string words;  ///< "water boils at 93.3 °C at 2000 m"
};

Altitude altitude_of(const Check& check) {
  const auto& height = check.kitchen.altitude_m;
  const double boiling = physics::boiling_point(height ? height->approximate() : 0);
  std::string words = "water boils at " + figure_text(std::round(10 * boiling) / 10, measure::Kind::temperature);
  if (!height) return {boiling, words + " at the sea, and lower further up"};
  return {boiling, words + " at this kitchen's " + std::to_string(height->nearest()) + " m"};
}

bool boils_in_water(std::string_view lower_text) {
  return says(lower_text, {"boil", "simmer", "poach", "scald", "blanch", "stew", "braise", "bouill", "frémi", "mijot", "poch", "koch",
                           "köchel", "pochier", "blanchier", "herv", "escalf", "guis"});
}

bool is_water(std::string_view lower_text) {
  return says(lower_text, {"water", "bain", "stock", "broth", "court", "eau", "wasser", "fond", "brühe", "agua", "caldo"}) &&
         !says_sugar_or_fat(lower_text);
}

/// How far above water's boiling point a figure may lie; empty where nothing says that it is water that boils.
std::optional<double> margin_of(const Check& check, const StatedHeat& heat, int step) {
  const Node node = heat.statement->node;
  const Node step_node = check.flow.steps[at(step)].node;
  const std::string& sentence = own_sentence(check, step_node);
  const std::string words = sentence + " " + std::string(check.document.get(step_node, At::do_));
  if (says_pressure(words) || says_pressure(base::lower(check.document.get(step_node, At::setting)))) return std::nullopt;
  if (heat.el == El::medium_temp) {
    if (is_water(base::lower(check.document.get(node, At::of)))) return water_margin;
    return std::nullopt;
  }
  if (heat.el != El::food_temp || says_sugar_or_fat(sentence)) return std::nullopt;
  const std::string_view place = check.document.get(node, At::place);
  if (place == "surface") return std::nullopt;
  const bool inside = place == "core" || says_core(heat.before);
  if (!inside && !boils_in_water(words)) return std::nullopt;
  return is_watery(check, step) ? std::optional(food_margin) : std::nullopt;
}

void say_one(Check& check, const Statement& figure, const Altitude& altitude) {
  check.say(figure.where, figure.text + " is more than boiling: " + altitude.words,
            "give the figure that can be reached here, a cue and a longer time; or cook it under pressure");
}

void look_at_step(Check& check, int step, const Altitude& altitude) {
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    if (!heat.low || *heat.low <= altitude.boiling_c + water_margin || *heat.low > 160) continue;
    const auto margin = margin_of(check, heat, step);
    if (margin && *heat.low > altitude.boiling_c + *margin) say_one(check, *heat.statement, altitude);
  }
}

/// Water that is asked for hotter than it gets.
void look_at_water(Check& check, const Altitude& altitude) {
  for (const flow::Use& use : check.flow.uses) {
    const flow::Thing& thing = check.flow.things[at(use.thing)];
    if (use.mark == fiche::none || thing.ingredient < 0) continue;
    const food::Food* food = check.fiche.ingredients[at(thing.ingredient)].food;
    const Statement* figure = check.fiche.statement(use.mark, At::at);
    if (food == nullptr || food->id != "water" || figure == nullptr) continue;
    const auto low = low_of(*figure);
    if (low && *low > altitude.boiling_c + water_margin) say_one(check, *figure, altitude);
  }
}

void run(Check& check) {
  const Altitude altitude = altitude_of(check);
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at_step(check, step, altitude);
  look_at_water(check, altitude);
}

}  // namespace

/// Water, or food that is mostly water, hotter than it boils at the kitchen's height.
const Rule boiling_above_altitude = {
    .id = "boiling-above-altitude",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "water or watery food hotter than it boils at the kitchen's height",
    .explanation = R"(At 2000 m water boils at 93 °C. A custard that is to be held at 98 °C, a loaf with a core of 97 °C, an egg in
water at 100 °C: the figure never comes, and whoever waits for it overcooks or runs dry.

Held against are baths and pots of water, and food that is mostly water by its ingredients, boiled or in its core,
with a margin for weather, salt and sugar. Syrup, caramel, jam, frying fat, crusts and what is under pressure are let
be. Without an altitude in the kitchen file the sea's is taken.)",
    .bad = R"(    <ingredient id="stock" food="water">1 l</ingredient>
    <step do="boil">Heat the <use of="stock">water</use> to <food-temp>98 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="stock" food="water">1 l</ingredient>
    <step do="boil">Heat the <use of="stock">water</use> to <food-temp>93 °C</food-temp>.</step>)",
    .source = "ISO 2533 standard atmosphere; IAPWS-IF97 region 4",
    .schemas = "",
    .kitchen = R"(<kitchen altitude="2000 m"/>)",
    .run = run,
};

}  // namespace tamis::rules
