#include "core/rules/allergens_held.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/tally/allergens.h"

namespace tamis::rules {
namespace {

using fiche::El;

void run(Check& check) {
  if (!is_shared(check) || check.document.child(check.document.root(), El::allergens) != fiche::none) return;
  food::Allergens bits = 0;
  for (const tally::AllergenLine& held : allergens_held(check)) {
    if (!held.option) bits |= held.sure;
  }
  const std::string list = tally::allergen_list(bits, " ");
  say_to_share(check, place_of_fiche(check.document), "nothing says which allergens it holds",
               list.empty() ? "add <allergens> with what the suppliers' specifications say, and say so when there are none"
                            : "add <allergens contains=" + quoted(list) +
                                  "/>; these are assumed from the usual foods, the suppliers' specifications and local law "
                                  "decide");
}

}  // namespace

/// A fiche that others use has no allergen statement.
const Rule no_allergen_statement = {
    .id = "no-allergen-statement",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "nothing says which allergens it holds",
    .explanation = R"(A guest asks, and the answer has to come from paper: whoever is at the pass did not make it. A statement says what
is in it, what may have got in, or that none of the named allergens is there; no statement says that nobody has looked.

The advice lists what the foods surely hold by what they are: milk in butter, not the soy lecithin that is usual in
chocolate. That is assumed from the usual food of that name. The supplier's specification decides, and local law says
what must be named and how; this check replaces neither. A draft is not asked.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="brown-butter" state="released" lang="en" units="metric">
  <title>Brown butter</title>
  <component id="butter" title="Brown butter">
    <ingredient id="raw" food="butter-unsalted" name="butter">1 kg</ingredient>
    <step do="brown" on="hob">Cook the <use of="raw">butter</use> <until>until the foam falls and it smells of
      hazelnuts</until>.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="14 days"/>
  </component>
  <trial date="2026-08-02" batch="1 kg of butter" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="brown-butter" state="released" lang="en" units="metric">
  <title>Brown butter</title>
  <component id="butter" title="Brown butter">
    <ingredient id="raw" food="butter-unsalted" name="butter">1 kg</ingredient>
    <step do="brown" on="hob">Cook the <use of="raw">butter</use> <until>until the foam falls and it smells of
      hazelnuts</until>.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="14 days"/>
  </component>
  <allergens contains="milk"/>
  <trial date="2026-08-02" batch="1 kg of butter" verdict="passed"/>
</fiche>)",
    .source = "Regulation (EU) 1169/2011, Articles 9 and 44: allergens are named for food that is not packed too",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
