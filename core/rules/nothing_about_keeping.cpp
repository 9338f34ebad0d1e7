#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;

bool says_at_once(std::string_view lower_text) {
  return says(lower_text, {"at once", "immediately", "straight away", "to order", "aussitôt", "immédiatement", "à la minute",
                           "sofort", "al momento", "enseguida", "de inmediato"});
}

/// A dish that is served as it is made does not keep: it is served in a step, or the last step says so.
bool is_served_at_once(const Check& check) {
  const auto& steps = check.fiche.steps;
  return says_at_once(lower_words(check, steps.back().node)) ||
         std::any_of(steps.begin(), steps.end(), [](const fiche::Step& step) {
           return std::find(step.actions.begin(), step.actions.end(), "serve") != step.actions.end();
         });
}

void run(Check& check) {
  if (!is_shared(check)) return;
  const auto& elements = check.structure.elements;
  const bool keeps = std::any_of(elements.begin(), elements.end(), [](const auto& e) { return e.rule->el == El::keep; });
  if (keeps || check.fiche.steps.empty() || is_served_at_once(check)) return;
  say_to_share(check, place_of_fiche(check.document), "nothing says where and how long it keeps",
               "add <keep where=\"fridge\" at=\"…\" for=\"…\"/>, or say in the last step that it is served at once");
}

}  // namespace

/// A fiche that others use says nowhere how what it makes is kept.
const Rule nothing_about_keeping = {
    .id = "nothing-about-keeping",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "nothing says where and how long it keeps",
    .explanation = R"(Whoever finds a tub in the fridge on Thursday has only the fiche to ask. Where it is kept, how cold, for how
long, and how it comes back to the plate belong on it; so does "does not keep".

A <keep> in the fiche or in any component will do. The rule is silent where a step serves the dish, or the last one says
that it goes out at once. A draft is not asked. How long a food may be kept is for local rules and the house's own tests to say.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-water" state="released" lang="en" units="metric">
  <title>Plum water</title>
  <component id="water" title="Plum water">
    <ingredient id="plums" food="plum" prep="stoned">1 kg</ingredient>
    <step do="strain">Crush the <use of="plums">plums</use> and strain them overnight through muslin.</step>
  </component>
  <allergens>None of those that the law names.</allergens>
  <trial date="2026-08-02" batch="1 kg of plums" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-water" state="released" lang="en" units="metric">
  <title>Plum water</title>
  <component id="water" title="Plum water">
    <ingredient id="plums" food="plum" prep="stoned">1 kg</ingredient>
    <step do="strain">Crush the <use of="plums">plums</use> and strain them overnight through muslin.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="2 days"/>
  </component>
  <allergens>None of those that the law names.</allergens>
  <trial date="2026-08-02" batch="1 kg of plums" verdict="passed"/>
</fiche>)",
    .source = "common practice; CXC 1-1969 (Codex, General Principles of Food Hygiene), product information, from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
