#include "core/base/utf8.h"
#include "core/flow/actions.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;

void look_at(Check& check, fiche::Node verb) {
  const fiche::Attr word = check.document.find(verb, At::word), like = check.document.find(verb, At::like);
  if (word == fiche::none || like == fiche::none) return;  // said by the rules of the document
  const std::string_view own = base::trimmed(check.document.attribute_value(word));
  if (flow::action_named(own) != nullptr)
    check.say(check.document.value_span(word), quoted(own) + " is a word of the trade already",
              "take it out, or give the house's verb another word");
  const std::string_view meant = base::trimmed(check.document.attribute_value(like));
  if (flow::action_named(meant) != nullptr) return;
  std::vector<std::string_view> words;
  for (const flow::Action& action : flow::actions()) words.push_back(action.word);
  const std::string_view near = near_miss(meant, words).word;
  check.say(check.document.value_span(like), "the trade has no word " + quoted(meant) + " for what a step does",
            near.empty() ? "write one that step/do takes: cook, fold, chill" : "write " + quoted(near));
}

void run(Check& check) {
  for (const auto& [n, rule] : check.structure.elements)
    if (rule->el == fiche::El::verb) look_at(check, n);
}

}  // namespace

/// A verb of the house that means nothing, or takes a word of the trade.
const Rule misleading_verb = {
    .id = "misleading-verb",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a verb of the house that is like none of the trade's, or takes one of its words",
    .explanation = R"(A house says "buzz" and means puree. With <verb word="buzz" like="puree"/> in the kitchen file, or in a plugin, a step may
say do="buzz", and what happens to the food is worked out as for puree. That needs a word that the trade has no other use for,
and one of the trade's that it is like.)",
    .bad = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps" lang="en">
  <verb word="buzz" like="pureee"/>
</kitchen>)",
    .good = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps" lang="en">
  <verb word="buzz" like="puree"/>
</kitchen>)",
    .source = "common practice (core/flow/actions.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
