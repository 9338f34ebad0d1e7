#include "core/food/allergen_bits.h"
#include "core/rules/allergens_held.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/tally/allergens.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;
using tally::AllergenLine;

/// What some lists of tree nuts hold and others do not: the table follows Annex II, the author another law.
bool is_a_nut_to_some(const Check& check) {
  for (const fiche::Ingredient& one : check.fiche.ingredients) {
    for (const std::string_view word : {"coconut", "pine-nut", "chestnut"}) {
      if (one.food_id.find(word) != one.food_id.npos) return true;
    }
  }
  return false;
}

void run(Check& check) {
  if (!is_shared(check)) return;
  const Node statement = check.document.child(check.document.root(), El::allergens);
  if (statement == fiche::none) return;
  const fiche::Attr contains = check.document.find(statement, fiche::At::contains);
  if (contains == fiche::none) return;
  std::vector<std::string_view> unknown;
  // Whether sulphites are reached depends on the maker: nobody can find them from the foods.
  food::Allergens missing =
      food::read_allergens(check.document.attribute_value(contains), unknown) & ~food::allergen::sulphites;
  food::Allergens found = 0;
  for (const AllergenLine& line : allergens_held(check)) {
    if (line.unknown) return;  // it may be in there
    found |= line.sure | line.usual | line.may;
  }
  if ((found & food::allergen::gluten) != 0) found |= food::allergen::wheat;
  missing &= ~found;
  if ((missing & food::allergen::nuts) != 0 && is_a_nut_to_some(check)) missing &= ~food::allergen::nuts;
  if (missing == 0) return;
  const std::string list = tally::allergen_list(missing, ", ");
  say_to_share(check, check.document.value_span(contains),
               "the allergens name " + list + ", and no ingredient brings " + (list.find(',') == list.npos ? "it" : "them"),
               "name the ingredient that holds it; what may get in from the kitchen stands in may-contain; take out what is "
               "left from an earlier revision");
}

}  // namespace

/// The allergen statement names what no ingredient can bring.
const Rule allergen_not_found = {
    .id = "allergen-not-found",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "the allergen statement names what no ingredient brings",
    .explanation = R"(Celery in the statement and none in the pot: either an ingredient is missing from the list, or the statement is that of an
earlier revision. A guest who may eat the dish is sent away, and who has seen one wrong statement believes none.

Looked for in all ingredients, options, swaps and variants too, those of components kept in other files, by what the food
is, by what is usual in it and by what its supplier does not rule out. Not asked: where a food is not known to the kitchen
or the table, for sulphites, and for nuts where there is coconut, pine nut or chestnut, which some lists count among them.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="brown-butter" state="released" lang="en" units="metric">
  <title>Brown butter</title>
  <component id="butter" title="Brown butter">
    <ingredient id="raw" food="butter-unsalted" name="butter">1 kg</ingredient>
    <step do="brown" on="hob">Cook the <use of="raw">butter</use> <until>until the foam falls and it smells of
      toast</until>.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="7 days"/>
  </component>
  <allergens contains="milk nuts"/>
  <trial date="2026-08-02" batch="1 kg of butter" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="brown-butter" state="released" lang="en" units="metric">
  <title>Brown butter</title>
  <component id="butter" title="Brown butter">
    <ingredient id="raw" food="butter-unsalted" name="butter">1 kg</ingredient>
    <step do="brown" on="hob">Cook the <use of="raw">butter</use> <until>until the foam falls and it smells of
      toast</until>.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="7 days"/>
  </component>
  <allergens contains="milk" may-contain="nuts"/>
  <trial date="2026-08-02" batch="1 kg of butter" verdict="passed"/>
</fiche>)",
    .source = "Regulation (EU) 1169/2011, Article 7: information is accurate and does not mislead",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
