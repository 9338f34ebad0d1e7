#include <algorithm>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/contents.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool is_frying_fat(const Check& check, const StatedHeat& heat, std::string_view sentence) {
  if (heat.el != fiche::El::medium_temp) return false;
  const std::string of = base::lower(check.document.get(heat.statement->node, fiche::At::of));
  if (!of.empty())
    return base::says(of, {"fry", "oil", "fat", "lard", "dripping", "friture", "huile", "fett", "öl", "aceite", "fritura"});
  return base::says(sentence, {"fry", "fried", "frire", "frit", "ausback", "freír"});
}

bool is_potato(const food::Food* food) {
  return food != nullptr && (food->id.starts_with("potato") || food->id == "sweet-potato");
}

/// Potato that this step takes by a mark, or that its sentence names: what it only goes on from may be fried beside it.
bool takes_potato(const Check& check, int step, std::string_view sentence) {
  const bool named = base::says(sentence, {"potato", "chips", "fries", "pommes", "frites", "kartoffel", "patata"});
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if (use.mark == fiche::none && !named) continue;
    const flow::Thing& thing = check.flow.things[at(use.thing)];
    if (thing.ingredient >= 0 && is_potato(check.fiche.ingredients[at(thing.ingredient)].food)) return true;
    if (thing.maker < 0) continue;
    const Contents contents = contents_of(check, thing.maker);
    if (std::any_of(contents.parts.begin(), contents.parts.end(), [](const Part& part) { return is_potato(part.food); }))
      return true;
  }
  return false;
}

void look_at(Check& check, int step) {
  const fiche::Node node = check.flow.steps[at(step)].node;
  const std::vector<StatedHeat>& heats = stated_heats(check, node);
  for (const StatedHeat& heat : heats) {
    if (!heat.low || *heat.low <= figures::frying_starchy.high) continue;
    const std::string& sentence = own_sentence(check, node);
    if (!is_frying_fat(check, heat, sentence)) continue;
    if (*heat.low > figures::frying_fat_smokes.low + 5) {
      base::Finding& smoke = check.say(
          heat.statement->where, "frying fat at " + heat.statement->text + " smokes and breaks down: most do from 200 °C on",
          "fry at 160 to 180 °C; fat that smokes is near to catching fire: lid, and never water");
      check.worsen(smoke, base::Severity::warning);
      return;
    }
    if (!takes_potato(check, step, sentence)) continue;
    check.say(heat.statement->where,
              "potato fried at " + heat.statement->text + " forms more acrylamide: the guidance is 175 °C at most",
              "fry at 160 to 175 °C, to a golden colour and no darker");
    return;
  }
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Potato fried hotter than the guidance on acrylamide, or any fat heated until it smokes.
const Rule frying_fat_too_hot = {
    .id = "frying-fat-too-hot",
    .severity = base::Severity::advice,
    .topic = "temperature",
    .summary = "potato fried above 175 °C, or fat heated until it smokes",
    .explanation =
        R"(Starchy food browns with acrylamide in it, and the hotter and darker the more. Regulation (EU) 2017/2158 asks
those who fry potato to keep the fat below 175 °C; local rules may ask for more. Fat above 200 °C smokes, tastes of it, and
at 230 °C and more it may catch fire.

Held against is the temperature of the frying fat. Below 205 °C only what holds potato or sweet potato is spoken of;
doughnuts, fish in batter and tempura are fried at 180 to 190 °C and are let be.)",
    .bad = R"(    <ingredient id="potatoes" food="potato">1 kg</ingredient>
    <step>Fry the <use of="potatoes">potatoes</use> at <medium-temp of="frying oil">190 °C</medium-temp>.</step>)",
    .good = R"(    <ingredient id="potatoes" food="potato">1 kg</ingredient>
    <step>Fry the <use of="potatoes">potatoes</use> at <medium-temp of="frying oil">170 °C</medium-temp>.</step>)",
    .source = "Regulation (EU) 2017/2158, Annex II, from memory; smoke: common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
