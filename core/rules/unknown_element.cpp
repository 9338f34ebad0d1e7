#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::Node;

std::vector<std::string_view> names_that_may_stand(const Check& check, Node n) {
  std::vector<std::string_view> out;
  const Node parent = check.document.parent(n);
  if (parent == check.document.top()) return {"fiche", "kitchen"};
  const fiche::El el = check.document.el(parent);
  if (el == fiche::El::unknown) {
    for (const fiche::ElementRule& rule : fiche::element_rules()) out.push_back(rule.name);
  } else {
    for (const fiche::El child : fiche::element_rule(el).children) out.push_back(fiche::name_of(child));
  }
  return out;
}

/// Start and end tag in XML, the key in JSON.
void rename(Check& check, base::Finding& finding, Node n, std::string_view name) {
  const base::Span head = check.document.head_span(n);
  const base::Span whole = check.document.span(n);
  finding.edits.push_back(check.edit_span(check.document.name_span(n), name, true));
  if (check.document.spelling() != fiche::Spelling::xml || head.end == whole.end) return;
  const std::string_view source = check.document.source().slice(whole);
  const std::size_t tag = source.rfind("</");
  if (tag == source.npos) return;
  const auto begin = whole.begin + static_cast<std::uint32_t>(tag) + 2;
  const auto size = static_cast<std::uint32_t>(check.document.name(n).size());
  finding.edits.push_back(check.edit_span({begin, begin + size}, name, true));
}

void run(Check& check) {
  for (const Node n : check.structure.unknown_elements) {
    const std::string_view typed = check.document.name(n);
    const std::vector<std::string_view> words = names_that_may_stand(check, n);
    const NearMiss meant = near_miss(typed, words);
    std::string advice = "write <" + std::string(meant.word) + ">";
    if (meant.word.empty()) {
      advice = words.empty() ? "nothing but text may stand here"
                             : "here may stand " + list_of(words, 20) + "; a house's own element needs a prefix";
    }
    base::Finding& finding =
        check.say(check.document.name_span(n), "there is no element <" + std::string(typed) + ">", advice);
    if (meant.sure) rename(check, finding, n, meant.word);
  }
}

}  // namespace

/// An element whose name the vocabulary does not have. What stands in it is read, but where it stands is not judged.
const Rule unknown_element = {
    .id = "unknown-element",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "an element whose name no fiche or kitchen file has",
    .explanation = R"(What stands under a name that nobody knows is read by nobody: an ingredient typed as
<ingrediant> is in no weight, no order and no allergen list, although the page looks complete.

Where one known name is near and may stand at that place, the fix is sure and --mend makes it. Something of your own
belongs in a namespace of your own (a prefix declared on the first element); it is then kept by every verb.)",
    .bad = R"(    <ingrediant food="milk-whole">300 g</ingrediant>)",
    .good = R"(    <ingredient food="milk-whole">300 g</ingredient>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "rng xsd json",
    .run = run,
};

}  // namespace tamis::rules
