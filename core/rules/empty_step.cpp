#include "core/base/utf8.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  const fiche::Document& document = check.document;
  for (const fiche::Step& step : check.fiche.steps) {
    bool said = false;
    for (fiche::Node c = document.first_child(step.node); c != fiche::none && !said; c = document.next(c)) {
      said = document.kind(c) == fiche::NodeKind::text ? !base::trimmed(document.value(c)).empty()
                                                       : document.kind(c) == fiche::NodeKind::element;
    }
    if (said && !base::trimmed(document.all_text(step.node)).empty()) continue;
    check.say(document.head_span(step.node), "the step says nothing",
              "write what is done, in a sentence that a cook can follow");
  }
}

}  // namespace

/// A step without any words.
const Rule empty_step = {
    .id = "empty-step",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a step without words",
    .explanation = R"(A step is a sentence that a cook reads, even with all marks taken away. One without words is a gap in
the method that nobody sees on the card.

Where the source itself is cut off there, say so with <gap>: that is words enough.)",
    .bad = R"(    <step do="chill" unattended="4 h"/>)",
    .good = R"(    <step do="chill" unattended="4 h">Chill for <time>4 h</time>.</step>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
