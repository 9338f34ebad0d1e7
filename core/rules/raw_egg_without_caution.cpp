#include "core/rules/contents.h"
#include "core/rules/cook_limit.h"
#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/left_raw.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double batter = 0.15;  // flour in what is not meant to be eaten as it is
constexpr double warm = 50;      // °C: no more than that is raw

/// Eggs as they come in the shell, whole or parted.
bool is_shell_egg(const Check& check, const fiche::Ingredient& line) {
  const std::string_view id = general_id(check, line.food);
  return id == "egg-whole" || id == "egg-yolk" || id == "egg-white";
}

/// Whether it ends in a dough or batter that someone cooks later.
bool is_for_baking(const Check& check) {
  for (const flow::Step& step : check.flow.steps) {
    const Contents contents = contents_of(check, step.index);
    if (!contents.has(food::Role::egg)) continue;
    double flour = 0, whole = 0;
    for (const Part& part : contents.parts) {
      if (part.food == nullptr || !part.grams) continue;
      whole += part.grams->middle();
      if (part.food->role == food::Role::flour || part.food->role == food::Role::starch)
        flour += part.grams->middle();
    }
    if (flour >= batter * whole) return true;
  }
  return false;
}

void run(Check& check) {
  if (!is_shared(check) || !lists(check, food::Role::egg)) return;
  const std::string& cautions = cautions_of(check);
  if (says_undercooked(cautions) ||
      says(cautions, {"egg", "yolk", "white", "œuf", "oeuf", "jaune", "blanc", "ei", "huevo", "yema"}))
    return;
  const SafetyLimit& limit = safety_limit(check.kitchen, "cook_eggs");
  const SafetyLimit& products = safety_limit(check.kitchen, "egg_products");
  for (int thing = 0; thing < static_cast<int>(check.flow.things.size()); ++thing) {
    const flow::Thing& here = check.flow.things[at(thing)];
    if (here.kind != flow::Thing::Kind::ingredient || here.ingredient < 0 || !here.counts) continue;
    const fiche::Ingredient& line = check.fiche.ingredients[at(here.ingredient)];
    if (!is_shell_egg(check, line) ||
        says(words_of_line(check, thing), {"pasteuri", "boiled", "hard-cooked", "cooked"}))
      continue;
    const double hottest = hottest_of(check, thing);
    if (hottest >= limit.celsius - 0.5 || is_held_at(check, thing, products.celsius, products.seconds) ||
        is_for_baking(check))
      continue;
    base::Finding& finding =
        say_limit(check, check.document.head_span(line.node),
                  (hottest <= warm ? "the egg stays raw (at most " : "the egg is lightly cooked (at most ") +
                      degrees(hottest) + "), and no caution says so; cooked is " + degrees(limit.celsius) +
                      " for " + time_of(limit),
                  limit, "take pasteurised egg and say so, or say in a caution that guests at risk leave it");
    if (readiness_of(check.document) == Readiness::released) check.worsen(finding, base::Severity::warning);
    return;
  }
}

}  // namespace

/// Shell egg that stays raw or lightly cooked, and the fiche does not say so.
const Rule raw_egg_without_caution = {
    .id = "raw-egg-without-caution",
    .severity = base::Severity::advice,
    .topic = "safety",
    .summary = "egg that stays raw or lightly cooked, and no caution says so",
    .explanation =
        R"(Salmonella sits in a few eggs of every thousand: a mousse with raw egg is no dish for the very young, the old,
the pregnant and the ill, and whoever serves it must know. Cooked is 68 °C for 17 s where it is kept or held (US model code);
pasteurised egg is an answer too.

A tested fiche is asked as advice, a released one as a warning, once: where no step may bring shell egg to that, by its
figures and by the temperature that mixes come to. Silent where a caution speaks of egg or of guests at risk, where egg or
name are pasteurised, where a step heats without a figure, and for doughs and batters, which someone bakes. Local rules and
licensed persons decide.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="pale-cream" state="released" lang="en" units="metric">
  <title>Pale cream</title>
  <component id="cream" title="Pale cream">
    <ingredient id="yolks" food="egg-yolk" name="egg yolks">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white" name="sugar">80 g</ingredient>
    <step do="whisk serve">Whisk the <use of="yolks">yolks</use> and <use of="sugar">sugar</use> pale, and serve at once.</step>
  </component>
  <allergens contains="egg">Egg.</allergens>
  <trial date="2026-08-02" batch="180 g" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="pale-cream" state="released" lang="en" units="metric">
  <title>Pale cream</title>
  <component id="cream" title="Pale cream">
    <ingredient id="yolks" food="egg-yolk" name="egg yolks, pasteurised">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white" name="sugar">80 g</ingredient>
    <step do="whisk serve">Whisk the <use of="yolks">yolks</use> and <use of="sugar">sugar</use> pale, and serve at once.</step>
  </component>
  <allergens contains="egg">Egg.</allergens>
  <trial date="2026-08-02" batch="180 g" verdict="passed"/>
</fiche>)",
    .source = "FDA Food Code 3-401.11 and 3-801.11, from memory; 9 CFR 590.570",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
