#include <algorithm>
#include <array>

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

constexpr double parasites_die =
    60;  // °C for a minute (Regulation (EC) 853/2004, Annex III, Section VIII, from memory)

/// Fish that carries worms; tuna, shellfish and what is canned or salted does not count.
bool has_parasites(std::string_view id) {
  constexpr std::array<std::string_view, 15> fish{"bass-sea",  "cod",      "sole",   "haddock",  "halibut",
                                                  "herring",   "monkfish", "pike",   "salmon",   "salmon-wild",
                                                  "swordfish", "trout",    "turbot", "mackerel", "sardine"};
  return std::find(fish.begin(), fish.end(), id) != fish.end() || id == "bream-sea" || id == "john-dory";
}

void run(Check& check) {
  if (!is_shared(check) || !lists(check, food::Role::fish)) return;
  const std::string& cautions = cautions_of(check);
  if (says_undercooked(cautions) ||
      says(cautions, {"fish", "parasit", "freez", "frozen", "poisson", "fisch", "pescado"}))
    return;
  const SafetyLimit& limit = safety_limit(check.kitchen, "parasites");
  for (int thing = 0; thing < static_cast<int>(check.flow.things.size()); ++thing) {
    const flow::Thing& here = check.flow.things[at(thing)];
    if (here.kind != flow::Thing::Kind::ingredient || here.ingredient < 0 || !here.counts) continue;
    const fiche::Ingredient& line = check.fiche.ingredients[at(here.ingredient)];
    if (line.food == nullptr || !has_parasites(general_id(check, line.food))) continue;
    if (says(words_of_line(check, thing), {"freez", "frozen", "farmed", "cooked", "smoked", "congel", "surgel",
                                           "élevage", "zucht", "gefroren"}))
      continue;
    const double hottest = hottest_of(check, thing);
    if (hottest >= parasites_die || is_frozen_in(check, thing)) continue;
    base::Finding& finding = say_limit(check, check.document.head_span(line.node),
                                       "the fish comes to " + degrees(hottest) +
                                           " at most, and nothing says that it was frozen: for parasites " +
                                           degrees(limit.celsius) + " for " + time_of(limit),
                                       limit,
                                       "freeze it first, or take fish that was, or farmed on feed without "
                                       "parasites, and say so; and say it in a caution");
    if (readiness_of(check.document) == Readiness::released) check.worsen(finding, base::Severity::warning);
    return;
  }
}

}  // namespace

/// Fish that is eaten raw or lightly cooked, and nothing says that it was frozen.
const Rule raw_fish_not_frozen = {
    .id = "raw-fish-not-frozen",
    .severity = base::Severity::advice,
    .topic = "safety",
    .summary = "fish that stays raw or lightly cooked, and nothing says that it was frozen",
    .explanation =
        R"(Worms in wild fish outlive salt, lemon and cold smoke, and die of frost: −20 °C in the middle for 24 hours (EU, UK)
or seven days (US), −35 °C for 15 hours. Or of 60 °C for a minute.

A tested fiche is asked as advice, a released one as a warning, once: where no step may bring the fish to 60 °C, none
freezes it, and its line does not say frozen or farmed. A caution about fish, or about who is not to eat it, is an answer.
Tuna and shellfish are let be. Local rules and licensed persons decide.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="cured-sea-bass" state="released" lang="en" units="metric">
  <title>Sea bass in lemon</title>
  <component id="bass" title="Sea bass">
    <ingredient id="fish" food="bass-sea" name="sea bass fillet">400 g</ingredient>
    <ingredient id="lemon" food="lemon-juice" name="lemon juice">60 g</ingredient>
    <step do="slice marinate serve">Slice the <use of="fish">fish</use>, turn it in the <use of="lemon">lemon juice</use>, and
      serve at once.</step>
  </component>
  <allergens contains="fish">Fish.</allergens>
  <trial date="2026-08-02" batch="460 g" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="cured-sea-bass" state="released" lang="en" units="metric">
  <title>Sea bass in lemon</title>
  <component id="bass" title="Sea bass">
    <ingredient id="fish" food="bass-sea" name="sea bass fillet, frozen for two days">400 g</ingredient>
    <ingredient id="lemon" food="lemon-juice" name="lemon juice">60 g</ingredient>
    <step do="slice marinate serve">Slice the <use of="fish">fish</use>, turn it in the <use of="lemon">lemon juice</use>, and
      serve at once.</step>
  </component>
  <allergens contains="fish">Fish.</allergens>
  <trial date="2026-08-02" batch="460 g" verdict="passed"/>
</fiche>)",
    .source = "FDA Food Code 3-402.11; Regulation (EC) 853/2004, Annex III, Section VIII, from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
