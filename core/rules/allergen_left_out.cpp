#include <algorithm>

#include "core/rules/allergens_held.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/tally/allergens.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;
using tally::allergen_list;
using tally::AllergenLine;
using tally::left_out;

/// "milk (butter, cream), egg (yolks)".
std::string said_list(food::Allergens missing, const std::vector<AllergenLine>& held, food::Allergens given) {
  std::string out;
  for (const food::AllergenName& name : food::allergen_names()) {
    if ((missing & name.bit) == 0) continue;
    std::vector<std::string_view> foods;
    for (const AllergenLine& one : held) {
      const bool holds = !one.option && (left_out(one.sure, given) & name.bit) != 0;
      if (holds && std::find(foods.begin(), foods.end(), one.food) == foods.end()) foods.push_back(one.food);
    }
    std::string list;
    for (std::size_t i = 0; i < foods.size() && i < 3; ++i) list += (i == 0 ? "" : ", ") + std::string(foods[i]);
    if (foods.size() > 3) list += " …";
    if (!out.empty()) out += ", ";
    out += std::string(name.id) + " (" + list + ")";
  }
  return out;
}

void run(Check& check) {
  if (!is_shared(check)) return;
  const Node statement = check.document.child(check.document.root(), El::allergens);
  if (statement == fiche::none) return;  // no-allergen-statement says so
  const auto stated = tally::stated_allergens(check.document, statement, check.fiche.reading.language);
  if (!stated) return;
  const food::Allergens given = stated->contains;
  const std::vector<AllergenLine>& held = allergens_held(check);
  food::Allergens missing = 0;
  std::string specified;
  for (const AllergenLine& one : held) {
    if (one.option) continue;
    missing |= left_out(one.sure, given);
    if (left_out(one.sure, given) != 0 && !one.specified.empty()) specified = one.specified;
  }
  if (missing == 0) return;
  const std::string sure = specified.empty() ? "assumed from the usual food" : "so the supplier's specification of " + specified;
  base::Finding& finding = say_to_share(
      check, check.document.head_span(statement), "the allergens leave out " + said_list(missing, held, given),
      "write contains=" + quoted(allergen_list(given | missing, " ")) + "; " + sure +
          (specified.empty() ? ", and the supplier's specification and local law decide" : "; local law decides how it is named"));
  if (!specified.empty() && readiness_of(check.document) == Readiness::released) check.worsen(finding, base::Severity::error);
  for (const AllergenLine& one : held) {
    const food::Allergens more = one.option ? 0 : left_out(one.sure, given);
    if (more == 0) continue;
    finding.related.push_back({check.document.head_span(one.where), "holds " + allergen_list(more, ", "), {}, {}, {}});
  }
}

}  // namespace

/// The allergen statement leaves out what an ingredient surely holds.
const Rule allergen_left_out = {
    .id = "allergen-left-out",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "the allergen statement leaves out what an ingredient surely holds",
    .explanation = R"(The statement is what the pass reads to a guest. If butter is in the recipe and milk is not in the list, the guest
is told something that is not so.

Asked is only what a food holds by what it is (milk in butter, egg in yolk) or what the house's own file says of it, in
components kept in other files too. What makers usually add is not asked, nor sulphites: read the specification. Where
the kitchen file has the supplier's dated specification, that counts, and a released fiche that leaves it out is an
error; else the usual food is assumed. Optional lines and swaps are not asked. The supplier's specification and local
law decide; this check replaces neither.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="brown-butter" state="released" lang="en" units="metric">
  <title>Brown butter with walnuts</title>
  <component id="butter" title="Brown butter">
    <ingredient id="raw" food="butter-unsalted" name="butter">1 kg</ingredient>
    <ingredient id="nuts" food="walnut" name="walnuts">100 g</ingredient>
    <step do="brown" on="hob">Cook the <use of="raw">butter</use> with the <use of="nuts">walnuts</use> <until>until the
      foam falls and it smells of toast</until>.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="7 days"/>
  </component>
  <allergens contains="nuts"/>
  <trial date="2026-08-02" batch="1 kg of butter" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="brown-butter" state="released" lang="en" units="metric">
  <title>Brown butter with walnuts</title>
  <component id="butter" title="Brown butter">
    <ingredient id="raw" food="butter-unsalted" name="butter">1 kg</ingredient>
    <ingredient id="nuts" food="walnut" name="walnuts">100 g</ingredient>
    <step do="brown" on="hob">Cook the <use of="raw">butter</use> with the <use of="nuts">walnuts</use> <until>until the
      foam falls and it smells of toast</until>.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="7 days"/>
  </component>
  <allergens contains="nuts milk"/>
  <trial date="2026-08-02" batch="1 kg of butter" verdict="passed"/>
</fiche>)",
    .source = "Regulation (EU) 1169/2011, Articles 9, 21 and 44 and Annex II",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
