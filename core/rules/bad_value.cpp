#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/value_pattern.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Value;

std::string_view what_is_meant(Value value) {
  switch (value) {
    case Value::id: return "an id";
    case Value::idref: return "the id of something";
    case Value::idrefs: return "a list of ids";
    case Value::food: return "a food's id";
    case Value::words:
    case Value::actions: return "words of small letters";
    case Value::date: return "a date";
    case Value::clock: return "a time of day";
    case Value::whole: return "a whole number";
    case Value::money: return "a price";
    default: return "a value";
  }
}

/// Titles are left to empty-title, language tags to bad-language-tag.
void look_at_blank(Check& check, const Structure::Attribute& given) {
  const bool left_to_others = given.rule->at == At::title || given.rule->value == Value::language;
  if (left_to_others) return;
  check.say(check.document.attribute_span(given.attribute),
            std::string(fiche::name_of(given.rule->at)) + " is empty", "fill it in, or take the attribute out");
}

void look_at_choice(Check& check, const Structure::Attribute& given, std::string_view text) {
  const std::span<const std::string_view> words = fiche::choices_of(given.rule->value);
  for (const std::string_view word : words) {
    if (word == text) return;
  }
  const NearMiss meant = near_miss(text, words);
  const std::string advice =
      meant.word.empty() ? "write " + list_of(words) : "write " + std::string(meant.word) + " (" + list_of(words) + ")";
  base::Finding& finding = check.say(
      check.document.value_span(given.attribute),
      std::string(fiche::name_of(given.rule->at)) + " cannot be " + quoted(text), advice);
  if (meant.sure) finding.edits.push_back(check.edit_value(given.attribute, meant.word));
}

void run(Check& check) {
  for (const Structure::Attribute& given : check.structure.attributes) {
    const std::string_view text = base::trimmed(check.document.attribute_value(given.attribute));
    const Value value = given.rule->value;
    if (text.empty()) {
      look_at_blank(check, given);
    } else if (!fiche::choices_of(value).empty()) {
      look_at_choice(check, given, text);
    } else if (!fits(value, text)) {
      check.say(check.document.value_span(given.attribute),
                quoted(text) + " is not " + std::string(what_is_meant(value)), "write " + std::string(form_of(value)));
    }
  }
}

}  // namespace

/// An attribute whose value is empty, not one of its words, or not spelled as its kind asks. Amounts, temperatures and
/// other measures have rules of their own.
const Rule bad_value = {
    .id = "bad-value",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "an attribute's value is not one it can have",
    .explanation = R"(Some attributes take one of a few words (mode is static, fan, deck, combi or steam), others an id, a
date, a time of day, a price. Anything else is read by nobody: mode="convection" would leave the oven's mode unsaid.

Where one of the words is near, the fix is sure and --mend makes it.)",
    .bad = R"(    <step>Bake at <oven-temp mode="fann">170 °C</oven-temp>.</step>)",
    .good = R"(    <step>Bake at <oven-temp mode="fan">170 °C</oven-temp>.</step>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "rng xsd json",
    .run = run,
};

}  // namespace tamis::rules
