#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

std::vector<std::string_view> free_names(const Check& check, fiche::Node n) {
  std::vector<std::string_view> out;
  for (const fiche::AttributeRule& rule : fiche::element_rule(check.document.el(n)).attributes) {
    if (check.document.find(n, rule.at) == fiche::none) out.push_back(fiche::name_of(rule.at));
  }
  return out;
}

std::vector<std::string_view> shown_names(const Check& check, fiche::Node n) {
  std::vector<std::string_view> out = free_names(check, n);
  std::erase_if(out, [](std::string_view name) { return name.starts_with("was"); });
  return out;
}

void run(Check& check) {
  for (const fiche::Attr a : check.structure.unknown_attributes) {
    const fiche::Node n = check.document.owner(a);
    const std::string_view typed = check.document.attribute_name(a);
    const std::vector<std::string_view> words = free_names(check, n);
    const NearMiss meant = near_miss(typed, words);
    std::string advice = "write " + std::string(meant.word) + "=\"…\"";
    if (meant.word.empty()) {
      const std::vector<std::string_view> shown = shown_names(check, n);
      advice = shown.empty() ? "it takes no attributes; one of a house's own needs a prefix"
                             : "it may have " + list_of(shown) + "; one of a house's own needs a prefix";
    }
    const std::string element = "<" + std::string(check.document.name(n)) + ">";
    base::Finding& finding = check.say(check.document.attribute_name_span(a),
                                       element + " has no attribute " + quoted(typed), std::move(advice));
    if (meant.sure) {
      finding.edits.push_back(check.edit_span(check.document.attribute_name_span(a), meant.word, true));
    }
  }
}

}  // namespace

/// An attribute that its element does not have. What it says is then not judged.
const Rule unknown_attribute = {
    .id = "unknown-attribute",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "an attribute that its element does not have",
    .explanation = R"(An attribute under a wrong name says nothing: pieces typed as peices leaves the eggs uncounted, and
nobody sees it on the printed card.

Where one known name is near, the fix is sure and --mend makes it. An attribute of your own belongs in a namespace of
your own: declare a prefix on the first element and write prefix:name.)",
    .bad = R"(    <ingredient food="egg-yolk" peices="5">90 g</ingredient>)",
    .good = R"(    <ingredient food="egg-yolk" pieces="5">90 g</ingredient>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "rng xsd json",
    .run = run,
};

}  // namespace tamis::rules
