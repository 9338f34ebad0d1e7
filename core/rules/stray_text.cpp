#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  const fiche::Document& document = check.document;
  for (const fiche::Node n : check.structure.stray_texts) {
    const std::string_view text = document.value(n);
    const std::string_view inner = base::trimmed(text);
    const auto begin = static_cast<std::size_t>(inner.data() - text.data());
    const std::string parent = "<" + std::string(document.name(document.parent(n))) + ">";
    check.say(document.text_span(n, begin, begin + inner.size()),
              "the words " + quoted(inner) + " stand loose in " + parent,
              "put them into a <step>, an <ingredient> or a <note>");
  }
}

}  // namespace

/// Words directly in an element that holds only other elements.
const Rule stray_text = {
    .id = "stray-text",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "words where only elements may stand",
    .explanation = R"(Words that stand in no step, ingredient or note are printed nowhere: "strain before use" left
between two steps never reaches the cook.

Often a tag was closed too early or is missing. Put the words into the step they belong to, or into a <note>.)",
    .bad = R"(    <step>Boil the syrup.</step>
    Strain before use.)",
    .good = R"(    <step>Boil the syrup.</step>
    <step>Strain before use.</step>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "rng xsd json",
    .run = run,
};

}  // namespace tamis::rules
