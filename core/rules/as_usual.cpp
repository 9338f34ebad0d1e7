#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/step_words.h"
#include "core/rules/vague_words.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;

/// A cue that shows something, or a picture of done.
bool has_picture(const Check& check, Node step) {
  bool picture = check.document.child(step, El::done) != fiche::none;
  for_each_mark(check.document, step, [&](Node mark) {
    picture |= check.document.el(mark) == El::until &&
               !is_no_picture(check.document.all_text(mark), check.fiche.reading.language);
  });
  return picture;
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const fiche::Step& step : check.fiche.steps) {
    const std::string& text = own_words(check, step.node);
    const auto habit = leans_on_habit(text, check.fiche.reading.language);
    if (!habit || has_picture(check, step.node)) continue;
    say_to_share(check, check.document.head_span(step.node),
                 quoted(text.substr(habit->begin, habit->end - habit->begin)) + " is another thing in every kitchen",
                 "write what is done, for how long and until what is seen, or name the fiche that says it");
  }
}

}  // namespace

/// A step that leans on what this kitchen does anyway: "as usual".
const Rule as_usual = {
    .id = "as-usual",
    .severity = base::Severity::advice,
    .topic = "teaching",
    .summary = "\"as usual\", and nothing shows how that is done",
    .explanation = R"("Line the ring as usual", "bake for the usual time": who learned it here knows, and the fiche is for everyone
else. Habit is what a kitchen does not see of itself.

The rule knows such words in English, French, German and Spanish (core/rules/vague_words.inc). It is silent where the
step shows what is wanted, with an <until> that can be seen or a <done>. A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="beans" food="bean-green" name="green beans">1 kg</ingredient>
    <step do="cut">Top and tail the <use of="beans">beans</use> as usual.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="beans" food="bean-green" name="green beans">1 kg</ingredient>
    <step do="cut">Take the stalk end off the <use of="beans">beans</use>; leave the tail on.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
