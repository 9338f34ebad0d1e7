#include <algorithm>

#include "core/rules/figure_text.h"
#include "core/rules/figure_value.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Statement;

constexpr double hair = 2;  // °C: rounding of one scale to the other

/// The hottest oven figure of the step, with a deck's top and bottom; null when it has none.
const Statement* hottest_oven(const Check& check, const std::vector<StatedHeat>& heats) {
  const Statement* out = nullptr;
  for (const StatedHeat& heat : heats) {
    if (heat.el != El::oven_temp) continue;
    for (const At at : {At::unknown, At::top, At::bottom}) {
      const Statement* figure = check.fiche.statement(heat.statement->node, at);
      if (figure == nullptr || !figure->amount) continue;
      if (!figure->amount->has_figure()) return nullptr;  // "a hot oven" leaves it open
      if (out == nullptr || highest_of(*figure->amount) > highest_of(*out->amount)) out = figure;
    }
  }
  return out;
}

/// "bake at 150 °C to a core of 160 °C", "to a core of 99 °C in an oven at 90 °C": one sentence, food and its oven.
bool is_in_that_oven(const std::vector<StatedHeat>& heats, std::size_t food) {
  for (std::size_t i = 0; i < heats.size(); ++i) {
    if (heats[i].el != El::oven_temp || heats[i].sentence != heats[food].sentence) continue;
    if (i < food) return true;
    const bool close = i == food + 1 && heats[i].before.find(',') == std::string::npos && says(heats[i].before, {"in", "dans", "im"});
    if (close) return true;
  }
  return false;
}

bool is_something_else(const Check& check, const StatedHeat& food) {
  if (check.document.get(food.statement->node, At::place) == "surface") return true;
  return says_sugar_or_fat(food.before) ||
         says(food.before, {"pan", "sear", "grill", "torch", "stone", "steel", "water", "hob", "plate", "poêle", "pfanne", "sartén"});
}

void look_at(Check& check, fiche::Node step) {
  const std::vector<StatedHeat>& heats = stated_heats(check, step);
  const Statement* oven = hottest_oven(check, heats);
  if (oven == nullptr) return;
  const double most = highest_of(*oven->amount);
  for (std::size_t i = 0; i < heats.size(); ++i) {
    const StatedHeat& food = heats[i];
    if (food.el != El::food_temp || !food.low || *food.low <= most + hair) continue;
    if (!is_in_that_oven(heats, i) || is_something_else(check, food)) continue;
    check.say(food.statement->where, "the food is to come to " + food.statement->text + " in an oven at " + oven->text,
              "one of the two is wrong: nothing gets hotter than its oven")
        .related.push_back({oven->where, "the oven", {}, {}, {}});
  }
}

void run(Check& check) {
  for (const fiche::Step& step : check.fiche.steps) look_at(check, step.node);
}

}  // namespace

/// A core that is to get hotter than the oven it bakes in.
const Rule food_hotter_than_oven = {
    .id = "food-hotter-than-oven",
    .severity = base::Severity::error,
    .topic = "temperature",
    .summary = "food that is to get hotter than the oven it is in",
    .explanation = R"(A core of 96 °C in an oven at 90 °C is never reached, however long it takes: the two figures were swapped, or
one is on the other scale.

Held together are the oven's hottest figure of the step and a temperature of the food in the same sentence. Sugar,
fat, surfaces and what is done in a pan beside it are let be, and so is the rest after roasting.)",
    .bad = R"(    <step>Roast at <oven-temp mode="fan">60 °C</oven-temp> to a core of <food-temp place="core">75 °C</food-temp>.</step>)",
    .good = R"(    <step>Roast at <oven-temp mode="fan">120 °C</oven-temp> to a core of <food-temp place="core">54 °C</food-temp>.</step>)",
    .source = "second law of thermodynamics: heat goes from the hotter to the colder",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
