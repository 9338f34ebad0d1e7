#include <algorithm>

#include "core/food/food.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;

void run(Check& check) {
  std::vector<std::string_view> known;
  std::vector<std::string_view> unknown;
  for (const Structure::Attribute& given : check.structure.attributes) {
    if (given.rule->at != At::contains && given.rule->at != At::may_contain) continue;
    const std::string_view list = check.document.attribute_value(given.attribute);
    unknown.clear();
    (void)food::read_allergens(list, unknown);
    for (const std::string_view word : unknown) {
      if (known.empty()) {
        for (const food::AllergenName& name : food::allergen_names()) known.push_back(name.id);
      }
      const NearMiss meant = near_miss(word, known);
      const auto at = static_cast<std::size_t>(word.data() - list.data());
      const base::Span where = check.document.value_span(given.attribute, at, at + word.size());
      base::Finding& finding =
          check.say(where, quoted(word) + " is none of the named allergens",
                    meant.word.empty() ? "write " + list_of(known, known.size()) : "write " + std::string(meant.word));
      if (meant.sure) finding.edits.push_back(check.edit_span(where, meant.word, true));
    }
  }
}

}  // namespace

/// A word in contains or may-contain that names none of the allergens of the law.
const Rule unknown_allergen = {
    .id = "unknown-allergen",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a word in an allergen list that names no allergen",
    .explanation = R"(A list of allergens is only worth something when every word in it is understood: "peanutt" would
drop out of the label, and a guest could be hurt.

The words are those of the table: the 14 of Regulation (EU) 1169/2011, Annex II, which hold the 9 of US law. Local
rules may ask for more; write those in the words of the element.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Walnut slice</title>
  <allergens contains="milk egg peanutt"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Walnut slice</title>
  <allergens contains="milk egg peanut"/>
</fiche>)",
    .source = "Regulation (EU) 1169/2011, Annex II; 21 U.S.C. 321(qq)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
