#include <algorithm>
#include <cmath>
#include <vector>

#include "core/flow/actions.h"
#include "core/rules/contents.h"
#include "core/rules/figure_text.h"
#include "core/rules/heated.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

struct Starch {
  std::string_view name;
  const TradeFigure* figure = nullptr;
};

Starch starch_of(std::string_view id) {
  if (id == "starch-maize") return {"maize starch", &figures::starch_maize};
  if (id == "powder-custard") return {"custard powder", &figures::starch_maize};
  if (id == "starch-potato") return {"potato starch", &figures::starch_potato};
  if (id == "starch-tapioca") return {"tapioca starch", &figures::starch_tapioca};
  return {};
}

/// Whether the step warms the food, how far only a figure says: "cook", "thicken", "heat".
bool only_warms(const Check& check, int step) {
  const auto& actions = check.fiche.steps[at(check.flow.steps[at(step)].index)].actions;
  bool warms = false;
  for (const std::string_view word : actions) {
    const flow::Action* action = flow::action_named(word);
    if (action == nullptr) return false;
    if (!action->heats()) continue;
    if (action->heat != flow::Action::Heat::warms) return false;
    warms = true;
  }
  return warms;
}

void look_at(Check& check, int step) {
  if (!only_warms(check, step)) return;
  const StatedHeat* hottest = nullptr;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    if (heat.el != fiche::El::food_temp || !heat.high) return;
    if (hottest == nullptr || *heat.high > *hottest->high) hottest = &heat;
  }
  if (hottest == nullptr || *hottest->high >= figures::starch_maize.low) return;
  const Contents contents = contents_of(check, step);
  for (const Part& part : contents.parts) {
    const Starch starch = starch_of(general_id(check, part.food));
    if (starch.figure == nullptr || *hottest->high >= starch.figure->low) continue;
    if (heated_later(check, step)) return;
    check.say(hottest->statement->where,
              std::string(starch.name) + " thickens between " + std::to_string(std::lround(starch.figure->low)) + " and " +
                  figure_text(starch.figure->high, measure::Kind::temperature) + ", and it is only taken to " +
                  hottest->statement->text,
              "bring it to the boil, or it stays thin and tastes of flour");
    return;
  }
}

void run(Check& check) {
  const bool starch =
      std::any_of(check.fiche.ingredients.begin(), check.fiche.ingredients.end(),
                  [&](const fiche::Ingredient& line) { return starch_of(general_id(check, line.food)).figure != nullptr; });
  if (!starch) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// A sauce thickened with starch that never gets hot enough to thicken.
const Rule starch_not_cooked = {
    .id = "starch-not-cooked",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "what is thickened with starch and never gets hot enough for it to thicken",
    .explanation = R"(Starch swells in a range of temperatures: maize between 62 and 75 °C, potato between 56 and 68 °C, tapioca
between 58 and 70 °C; sugar and acid shift it up. Below, a sauce stays thin, tastes raw, and may thicken all at once when it is
reheated.

Held against is the hottest temperature of a step that only warms, with starch in it, where no later step heats what it
makes.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="starch" food="starch-maize">35 g</ingredient>
    <step do="cook">Stir the <use of="starch">starch</use> into the <use of="milk">milk</use> and cook to
      <food-temp>55 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="starch" food="starch-maize">35 g</ingredient>
    <step do="cook">Stir the <use of="starch">starch</use> into the <use of="milk">milk</use> and cook to
      <food-temp>95 °C</food-temp>.</step>)",
    .source = "common practice: gelatinisation ranges of maize, potato and tapioca starch",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
