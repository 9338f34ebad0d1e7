#include "core/rules/allergens_held.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/tally/allergens.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;
using tally::AllergenLine;

void run(Check& check) {
  if (!is_shared(check)) return;
  const Node statement = check.document.child(check.document.root(), El::allergens);
  if (statement == fiche::none) return;
  const auto stated = tally::stated_allergens(check.document, statement, check.fiche.reading.language);
  if (!stated) return;
  const std::vector<AllergenLine>& lines = allergens_held(check);
  food::Allergens said = stated->contains | stated->may | stated->words;
  for (const AllergenLine& line : lines) {
    if (!line.option) said |= tally::left_out(line.sure, stated->contains);  // allergen-left-out says those
  }
  for (const AllergenLine& line : lines) {
    const food::Allergens more = line.option ? tally::left_out(line.sure, said) : 0;
    if (more == 0) continue;
    said |= more;
    const std::string list = tally::allergen_list(more, ", ");
    say_to_share(check, check.document.head_span(line.where),
                 "with " + line.food + " it holds " + list + ", and the allergens do not say so",
                 "say it in the words of <allergens>, \"" + list + " when " + line.food + " is taken\", or in may-contain")
        .related.push_back({check.document.head_span(statement), "the statement", {}, {}, {}});
  }
}

}  // namespace

/// What is optional or may be taken instead brings an allergen that the statement does not name.
const Rule allergen_in_an_option = {
    .id = "allergen-in-an-option",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "an option or a swap brings an allergen that the statement does not name",
    .explanation = R"(The list offers butter in place of the oil, and the statement was written for the oil. Whoever takes the butter serves milk
under a statement that does not name it.

Looked at: optional lines, the later lines of a choice, and swaps. It is enough that the statement names the allergen
somewhere: in contains, in may-contain, or in its words ("milk, when butter is taken").)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="toasted-walnuts" state="released" lang="en" units="metric">
  <title>Toasted walnuts</title>
  <component id="nuts" title="Walnuts">
    <ingredient id="walnuts" food="walnut" name="walnuts">500 g</ingredient>
    <choice>
      <ingredient id="oil" food="oil-sunflower" name="oil">20 g</ingredient>
      <ingredient id="butter" food="butter-unsalted" name="butter">20 g</ingredient>
    </choice>
    <step do="toast" on="hob">Toast the <use of="walnuts">walnuts</use> in the <use of="oil butter">oil</use>
      <until>until they smell of nut</until>.</step>
    <keep where="dry store, closed" for="7 days"/>
  </component>
  <allergens contains="nuts"/>
  <trial date="2026-08-02" batch="500 g" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="toasted-walnuts" state="released" lang="en" units="metric">
  <title>Toasted walnuts</title>
  <component id="nuts" title="Walnuts">
    <ingredient id="walnuts" food="walnut" name="walnuts">500 g</ingredient>
    <choice>
      <ingredient id="oil" food="oil-sunflower" name="oil">20 g</ingredient>
      <ingredient id="butter" food="butter-unsalted" name="butter">20 g</ingredient>
    </choice>
    <step do="toast" on="hob">Toast the <use of="walnuts">walnuts</use> in the <use of="oil butter">oil</use>
      <until>until they smell of nut</until>.</step>
    <keep where="dry store, closed" for="7 days"/>
  </component>
  <allergens contains="nuts">Nuts (walnut). Milk, when butter is taken.</allergens>
  <trial date="2026-08-02" batch="500 g" verdict="passed"/>
</fiche>)",
    .source = "Regulation (EU) 1169/2011, Articles 9, 21 and 44 and Annex II",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
