#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/contents.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

constexpr std::string_view infants =
    "infant|infants|babies|for baby|baby food|baby foods|baby purée|baby puree|weaning|first "
    "foods|nourrisson|nourrissons|pour bébé|"
    "petits pots|säugling|säuglinge|beikost|babybrei|lactante|lactantes|para bebés";

/// What the fiche says of whom it is for: its titles and summary.
std::string said_for(const Check& check) {
  std::string out = base::lower(check.fiche.title) + ". ";
  for (const auto& [node, rule] : check.structure.elements) {
    if (rule->el == fiche::El::summary) out += base::lower(check.document.all_text(node)) + " ";
    if (rule->el == fiche::El::component) out += base::lower(check.document.get(node, fiche::At::title)) + ". ";
  }
  return out;
}

void run(Check& check) {
  const auto& lines = check.fiche.ingredients;
  const auto honey = std::find_if(lines.begin(), lines.end(), [&](const fiche::Ingredient& line) {
    return general_id(check, line.food) == "honey" || has_phrase(base::lower(line.name), "honey|miel|honig");
  });
  if (honey == lines.end() || !has_phrase(said_for(check), infants)) return;
  check.say(check.document.head_span(honey->node),
            "honey in what is made for infants: never before they are twelve months old",
            "sweeten with ripe fruit, or not at all; local rules and licensed persons decide");
}

}  // namespace

/// Honey in a dish for infants.
const Rule honey_for_infants = {
    .id = "honey-for-infants",
    .severity = base::Severity::error,
    .topic = "safety",
    .summary = "honey in what is made for infants",
    .explanation =
        R"(Honey can hold spores of Clostridium botulinum that no kitchen's heat kills. They do nothing to those who are
older; in the gut of an infant under twelve months they grow and can paralyse.

Held together are a line of honey and a title or summary that speaks of infants, babies or weaning (baby carrots and baby
leaves are let be). Local rules and licensed persons decide.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="carrot-pot" state="draft" lang="en" units="metric">
  <title>Carrot pot for babies</title>
  <component id="pot" title="Carrot pot">
    <ingredient id="carrot" food="carrot">400 g</ingredient>
    <ingredient id="honey" food="honey">10 g</ingredient>
    <step do="steam blend">Steam the <use of="carrot">carrots</use> <until>until a knife goes in</until> and blend them with the
      <use of="honey">honey</use>.</step>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="carrot-pot" state="draft" lang="en" units="metric">
  <title>Glazed baby carrots</title>
  <component id="pot" title="Carrots">
    <ingredient id="carrot" food="carrot">400 g</ingredient>
    <ingredient id="honey" food="honey">10 g</ingredient>
    <step do="steam toss">Steam the <use of="carrot">carrots</use> <until>until a knife goes in</until> and toss them in the
      <use of="honey">honey</use>.</step>
  </component>
</fiche>)",
    .source = "advice of public health bodies in Europe and the US (no honey before twelve months), from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
