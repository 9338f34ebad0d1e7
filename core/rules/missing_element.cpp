#include <algorithm>

#include "core/base/nearest.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

/// A mistyped name of this element is already said by unknown-element.
bool is_there_mistyped(const Check& check, fiche::Node parent, std::string_view name) {
  const std::string_view names[] = {name};
  return std::any_of(check.structure.unknown_elements.begin(), check.structure.unknown_elements.end(),
                     [&](fiche::Node n) {
                       return check.document.parent(n) == parent &&
                              !base::nearest(check.document.name(n), names).empty();
                     });
}

void run(Check& check) {
  const fiche::Document& document = check.document;
  for (const auto& [n, rule] : check.structure.elements) {
    const std::string tag = "<" + std::string(rule->name) + ">";
    for (const fiche::El required : rule->required_children) {
      const std::string name(fiche::name_of(required));
      if (document.child(n, required) != fiche::none || is_there_mistyped(check, n, name)) continue;
      check.say(document.head_span(n), tag + " has no <" + name + ">", "add <" + name + ">…</" + name + "> as its first");
    }
    const bool empty_choice = rule->el == fiche::El::choice && document.child(n, fiche::El::ingredient) == fiche::none &&
                              document.child(n, fiche::El::equipment) == fiche::none;
    if (empty_choice && !is_there_mistyped(check, n, "ingredient") && !is_there_mistyped(check, n, "equipment")) {
      check.say(document.head_span(n), "<choice> offers nothing to choose from",
                "put the ingredients or the equipment in it, the author's own first");
    }
  }
}

}  // namespace

/// An element without a child that it must have. Silent where the child is there under a mistyped name.
const Rule missing_element = {
    .id = "missing-element",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "an element lacks one that must stand in it",
    .explanation = R"(A fiche without a title cannot be listed, ordered from or found again; a choice without
anything in it leaves the cook with nothing to take.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <component id="sauce" title="Sauce"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
  <component id="sauce" title="Sauce"/>
</fiche>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "rng xsd json",
    .run = run,
};

}  // namespace tamis::rules
