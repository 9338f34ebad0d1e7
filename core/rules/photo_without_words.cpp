#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el != El::photo || !base::trimmed(check.document.get(n, At::alt)).empty()) continue;
    say_to_share(check, check.document.head_span(n),
                 "the photo " + quoted(check.document.get(n, At::href)) + " has no words for those who do not see it",
                 "add alt=\"…\" with what the picture shows");
  }
}

}  // namespace

/// A photograph without alt, on a fiche that others read.
const Rule photo_without_words = {
    .id = "photo-without-words",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "a photograph without words for those who do not see it",
    .explanation = R"(A cook who reads by ear, a printed card in grey, a page whose pictures have not come yet: each needs the picture in
words. Say what it shows that matters ("the ribbon lies on the foam for three seconds"), not that it is a photo.

A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="plums" food="plum">1 kg</ingredient>
    <step do="cut">Halve the <use of="plums">plums</use> along the seam.<photo href="photos/seam.jpg"/></step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="plums" food="plum">1 kg</ingredient>
    <step do="cut">Halve the <use of="plums">plums</use> along the seam.<photo href="photos/seam.jpg" alt="the knife stands in
      the groove, the stone is not cut"/></step>)",
    .source = "WCAG 2.2, 1.1.1 Non-text Content",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
