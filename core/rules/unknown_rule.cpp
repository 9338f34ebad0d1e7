#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

/// A plugin may bring rules that are not known here: then only what looks mistyped is said.
bool may_be_a_plugins(const Check& check) {
  return std::any_of(check.structure.elements.begin(), check.structure.elements.end(),
                     [](const Structure::Element& element) { return element.rule->el == fiche::El::plugin; });
}

void run(Check& check) {
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el != fiche::El::rule) continue;
    const fiche::Attr named = check.document.find(n, fiche::At::id);
    if (named == fiche::none) continue;
    const std::string_view id = base::trimmed(check.document.attribute_value(named));
    if (id.empty() || rule_by_id(id) != nullptr) continue;
    std::vector<std::string_view> ids;
    for (const Rule* one : rules()) ids.push_back(one->id);
    const NearMiss meant = near_miss(id, ids);
    if (meant.word.empty() && may_be_a_plugins(check)) continue;
    base::Finding& finding = check.say(check.document.value_span(named), "there is no rule " + quoted(id),
                                       meant.word.empty() ? "tamis explain lists the rules"
                                                          : "write " + std::string(meant.word));
    if (meant.sure) finding.edits.push_back(check.edit_value(named, meant.word));
  }
}

}  // namespace

/// A kitchen file sets a rule that does not exist.
const Rule unknown_rule = {
    .id = "unknown-rule",
    .severity = base::Severity::warning,
    .topic = "document",
    .summary = "the kitchen sets a rule that does not exist",
    .explanation = R"(A kitchen file may make a rule stricter, milder or switch it off. Under a mistyped name the wish has
no effect, and the house believes it is checked when it is not.)",
    .bad = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps">
  <rule id="unknown-fod" severity="error"/>
</kitchen>)",
    .good = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps">
  <rule id="unknown-food" severity="error"/>
</kitchen>)",
    .source = "the list of rules (tamis explain)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
