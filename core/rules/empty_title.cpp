#include "core/base/utf8.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  const fiche::Document& document = check.document;
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el == fiche::El::title && base::trimmed(document.all_text(n)).empty()) {
      check.say(document.head_span(n), "the title is empty", "write the name of the dish");
    }
    if (rule->el != fiche::El::component && rule->el != fiche::El::variant) continue;
    const fiche::Attr title = document.find(n, fiche::At::title);
    if (title == fiche::none || !base::trimmed(document.attribute_value(title)).empty()) continue;
    check.say(document.attribute_span(title), "the title of this " + std::string(rule->name) + " is empty",
              "write what the cook calls it");
  }
}

}  // namespace

/// A title of a fiche, component or variant without words.
const Rule empty_title = {
    .id = "empty-title",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a title without words",
    .explanation = R"(A dish or component without a name cannot be found, called for or labelled in the fridge. Write the
name that the kitchen uses for it.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title> </title>
  <component id="sauce" title="Sauce"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
  <component id="sauce" title="Sauce"/>
</fiche>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
