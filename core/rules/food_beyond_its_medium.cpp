#include "core/rules/figure_value.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

constexpr double hair = 1;      // °C
constexpr double heats_from = 40;  // °C: a medium as hot as that is there to heat
constexpr double cools_up_to = 15;  // °C: one as cold as that is there to cool

/// Food and what surrounds it, in one sentence: "in a bath at 62 °C to a core of 65 °C", or the other way round with
/// nothing but "in a" between.
bool is_in_it(const std::vector<StatedHeat>& heats, std::size_t food, std::size_t medium) {
  if (heats[food].sentence != heats[medium].sentence) return false;
  if (medium < food) return medium + 1 == food;
  return medium == food + 1 && heats[medium].before.find(',') == std::string::npos &&
         says(heats[medium].before, {"in", "over", "dans", "im", "en"});
}

bool is_something_else(const Check& check, const StatedHeat& food) {
  return check.document.get(food.statement->node, At::place) == "surface" || says_sugar_or_fat(food.before) ||
         says(food.before, {"then", "puis", "dann", "luego", "pan", "grill", "oven", "hob"});
}

void look_at_pair(Check& check, const StatedHeat& food, const StatedHeat& medium, std::string_view sentence) {
  const bool heats = medium.low && *medium.low >= heats_from;
  const bool cools = medium.high && *medium.high <= cools_up_to;
  if (!heats && !cools) return;
  const bool over = heats && medium.high && food.low && *food.low > *medium.high + hair && !says_cooling(sentence);
  const bool under = cools && medium.low && food.high && *food.high < *medium.low - hair;
  if (!over && !under) return;
  const std::string_view of = check.document.get(medium.statement->node, At::of);
  const std::string what = of.empty() ? "what surrounds it" : "the " + std::string(of);
  check.say(food.statement->where,
            "the food is to come to " + food.statement->text + ", and " + what + " is at " + medium.statement->text,
            over ? "one of the two is wrong: nothing gets hotter than what heats it"
                 : "one of the two is wrong: nothing gets colder than what cools it")
      .related.push_back({medium.statement->where, what, {}, {}, {}});
}

void look_at(Check& check, fiche::Node step) {
  const std::vector<StatedHeat>& heats = stated_heats(check, step);
  if (heats.size() < 2) return;
  const std::string& sentence = own_sentence(check, step);
  for (std::size_t food = 0; food < heats.size(); ++food) {
    if (heats[food].el != El::food_temp || is_something_else(check, heats[food])) continue;
    for (std::size_t medium = 0; medium < heats.size(); ++medium) {
      if (heats[medium].el == El::medium_temp && is_in_it(heats, food, medium)) look_at_pair(check, heats[food], heats[medium], sentence);
    }
  }
}

void run(Check& check) {
  for (const fiche::Step& step : check.fiche.steps) look_at(check, step.node);
}

}  // namespace

/// Food that is to get hotter than its bath, or colder than its freezer.
const Rule food_beyond_its_medium = {
    .id = "food-beyond-its-medium",
    .severity = base::Severity::error,
    .topic = "temperature",
    .summary = "food that is to get hotter than its bath, or colder than its fridge or freezer",
    .explanation = R"(A core of 65 °C does not come of a bath at 62 °C, nor -20 °C of a freezer at -18 °C. Where the figure is a
limit that food safety rests on, the batch never meets it.

Held together are a temperature of the food and the one right beside it of what surrounds it, in one sentence: from
40 °C on for heating, up to 15 °C for cooling. Hot syrup in a warm bath that cools it, surfaces and fat are let be.)",
    .bad = R"(    <step>Poach in a <medium-temp of="water bath">62 °C</medium-temp> bath to a core of <food-temp place="core">65 °C</food-temp>.</step>)",
    .good = R"(    <step>Poach in a <medium-temp of="water bath">65 °C</medium-temp> bath to a core of <food-temp place="core">62 °C</food-temp>.</step>)",
    .source = "second law of thermodynamics: heat goes from the hotter to the colder",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
