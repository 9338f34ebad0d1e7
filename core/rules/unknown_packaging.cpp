#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

void run(Check& check) {
  std::vector<std::string_view> known;
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el == El::packaging) known.push_back(base::trimmed(check.document.get(n, At::id)));
  }
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el != El::sale) continue;
    const fiche::Attr attribute = check.document.find(n, At::packaging);
    if (attribute == fiche::none) continue;
    const std::string_view all = check.document.attribute_value(attribute);
    for (std::size_t at = 0; at < all.size();) {
      const std::size_t end = std::min(all.find(' ', at), all.size());
      const std::string_view id = all.substr(at, end - at);
      const std::size_t begin = at;
      at = end + 1;
      if (id.empty() || std::find(known.begin(), known.end(), id) != known.end()) continue;
      const NearMiss meant = near_miss(id, known);
      const base::Span where = check.document.value_span(attribute, begin, end);
      base::Finding& finding = check.say(where, "no packaging is called " + quoted(id),
                                         meant.word.empty() ? "add <packaging id=" + quoted(id) + " price=\"…\"/>"
                                                            : "write " + std::string(meant.word));
      if (meant.sure) finding.edits.push_back(check.edit_span(where, meant.word, true));
    }
  }
}

}  // namespace

/// A sale names packaging that the kitchen file does not have.
const Rule unknown_packaging = {
    .id = "unknown-packaging",
    .severity = base::Severity::warning,
    .topic = "labelling",
    .summary = "a sale is packed in what the kitchen file does not have",
    .explanation = R"(The box that a dish is sold in is named by the id of a <packaging>. One that is not there costs nothing, and the cost of the
portion comes out too low.)",
    .bad = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps" lang="en">
  <packaging id="card-box" name="card box" price="36 EUR" pack="200"/>
  <sale fiche="walnut-slice" price="4.80 EUR" tax="10 %" packaging="cardbox"/>
</kitchen>)",
    .good = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps" lang="en">
  <packaging id="card-box" name="card box" price="36 EUR" pack="200"/>
  <sale fiche="walnut-slice" price="4.80 EUR" tax="10 %" packaging="card-box"/>
</kitchen>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
