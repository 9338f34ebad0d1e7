#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/step_words.h"
#include "core/rules/vague_words.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;

constexpr std::string_view advice = "say what is seen, felt or measured: \"until a skewer comes out dry\", or add <done> with the picture";

/// Looks at the until marks of a step; true when one was said.
bool look_at_marks(Check& check, Node step) {
  bool said = false;
  for_each_mark(check.document, step, [&](Node mark) {
    if (check.document.el(mark) != El::until) return;
    const std::string words = check.document.all_text(mark);
    if (said || !is_no_picture(words, check.fiche.reading.language)) return;
    said = true;
    say_to_share(check, check.document.span(mark), quoted(words) + " shows nobody when that is", std::string(advice));
  });
  return said;
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const fiche::Step& step : check.fiche.steps) {
    const fiche::Document& document = check.document;
    if (document.child(step.node, El::done) != fiche::none || cues_of(document, step.node).food_temp) continue;
    if (look_at_marks(check, step.node)) continue;
    const std::string& text = own_words(check, step.node);
    const auto vague = until_without_picture(text, check.fiche.reading.language);
    if (!vague) continue;
    say_to_share(check, document.head_span(step.node),
                 quoted(text.substr(vague->begin, vague->end - vague->begin)) + " shows nobody when that is", std::string(advice));
  }
}

}  // namespace

/// "Until done": a cue that only says that it is done.
const Rule done_without_picture = {
    .id = "done-without-picture",
    .severity = base::Severity::advice,
    .topic = "teaching",
    .summary = "\"until done\", and nothing says how done looks",
    .explanation = R"("Cook until ready" tells the one who already knows. A learner, or a cook at another stove, needs what the author
saw: the custard coats the spoon, a skewer comes out dry, the foam falls, the core is at 52 °C.

The rule knows words for "done" in English, French, German and Spanish (core/rules/vague_words.inc); words that can
be seen or felt, such as "set", "tender" or "golden", are not among them. It is silent where the step has a <done>
or a temperature of the food, and where something is only kept until it is wanted. A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="pears" food="pear" prep="peeled">600 g</ingredient>
    <step do="simmer" on="hob">Simmer the <use of="pears">pears</use> in their juice <until>until done</until>.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="pears" food="pear" prep="peeled">600 g</ingredient>
    <step do="simmer" on="hob">Simmer the <use of="pears">pears</use> in their juice <until>until they are glassy at the
      edge and a knife goes in with no push</until>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
