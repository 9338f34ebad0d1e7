#include <algorithm>

#include "core/base/nearest.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

/// A mistyped name of this attribute is already said by unknown-attribute.
bool is_there_mistyped(const Check& check, fiche::Node n, std::string_view name) {
  const std::string_view names[] = {name};
  return std::any_of(check.structure.unknown_attributes.begin(), check.structure.unknown_attributes.end(),
                     [&](fiche::Attr a) {
                       return check.document.owner(a) == n &&
                              !base::nearest(check.document.attribute_name(a), names).empty();
                     });
}

void run(Check& check) {
  for (const Structure::Element& element : check.structure.elements) {
    std::vector<std::string_view> missing;
    for (const fiche::AttributeRule& rule : element.rule->attributes) {
      if (!rule.required || check.document.find(element.node, rule.at) != fiche::none) continue;
      const std::string_view name = fiche::name_of(rule.at);
      if (!is_there_mistyped(check, element.node, name)) missing.push_back(name);
    }
    if (missing.empty()) continue;
    std::string names;
    std::string advice = "add";
    for (const std::string_view name : missing) {
      names += (names.empty() ? "" : name == missing.back() ? " and no " : ", no ") + std::string(name);
      advice += " " + std::string(name) + "=\"…\"";
    }
    check.say(check.document.head_span(element.node),
              "<" + std::string(element.rule->name) + "> has no " + names, std::move(advice));
  }
}

}  // namespace

/// An element without an attribute that it must have. Silent where the attribute is there under a mistyped name.
const Rule missing_attribute = {
    .id = "missing-attribute",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "an element lacks an attribute that it must have",
    .explanation = R"(A component without an id cannot be used by another one; without a title the card has no heading
for it. The few attributes that must be there are those without which the rest cannot be understood.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example">
  <title>Vanilla sauce</title>
  <component title="Sauce"/>
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
