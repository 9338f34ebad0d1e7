#include "core/base/utf8.h"
#include "core/rules/language_tag.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

std::string advice_for(const TagVerdict& verdict) {
  if (!verdict.meant.empty()) return "write " + quoted(verdict.meant);
  return "write a tag such as \"en\", \"en-GB\", \"fr\" or \"de-CH\"";
}

void run(Check& check) {
  for (const Structure::Attribute& given : check.structure.attributes) {
    if (given.rule->value != fiche::Value::language) continue;
    const std::string_view tag = base::trimmed(check.document.attribute_value(given.attribute));
    const TagVerdict verdict = judge_language_tag(tag);
    if (verdict.good) continue;
    const std::string message = tag.empty() ? "the language is empty" : quoted(tag) + " is no language tag";
    base::Finding& finding =
        check.say(tag.empty() ? check.document.attribute_span(given.attribute) : check.document.value_span(given.attribute),
                  message, advice_for(verdict));
    if (verdict.sure) finding.edits.push_back(check.edit_value(given.attribute, verdict.meant));
  }
}

}  // namespace

/// A language that is not a well-formed BCP 47 tag, or a language's name in its place.
const Rule bad_language_tag = {
    .id = "bad-language-tag",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "the language is not given as a BCP 47 tag",
    .explanation = R"(The language decides how numbers are read: in "fr" the comma is the decimal sign, in "en" it is
not. A tag that nobody can read leaves "1,5 kg" open.

Tags are those of BCP 47: a language of two or three letters ("en", "fr"), where needed a region ("en-GB", "de-CH"),
joined with hyphens. Where the name of a language or an underscore was written, the fix is sure.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" lang="fr_FR">
  <title>Sauce vanille</title>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" lang="fr-FR">
  <title>Sauce vanille</title>
</fiche>)",
    .source = "BCP 47 (RFC 5646, section 2.1)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
