#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/stale.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  for (const StatementPair& pair : was_pairs(check.fiche)) {
    const Gap gap = stale_gap(pair, check.document.el(pair.shown->node));
    if (!gap.apart) continue;
    const std::string was(fiche::name_of(pair.other->at));
    base::Finding& finding = check.say(
        pair.shown->where, quoted(pair.shown->text) + " is no longer what " + quoted(pair.other->text) + " (" + was +
                               ") comes to",
        "if the new figure is right, take " + was + " out; if the author's is, convert the fiche again");
    finding.related.push_back({pair.other->where, "the author's own figure", {}, {}, {}});
  }
}

}  // namespace

/// A converted figure was edited afterwards, and the author's own beside it (was, was-…) was not.
const Rule stale_conversion = {
    .id = "stale-conversion",
    .severity = base::Severity::warning,
    .topic = "measure",
    .summary = "a converted figure no longer fits the author's own beside it",
    .explanation = R"(A conversion keeps the author's figure beside the new one, so that converting back gives it again. When
someone then corrects the new figure only, converting back would bring the old mistake home.

Say which holds: take the kept figure out when the new one is right, or convert again from the author's.)",
    .bad = R"(    <ingredient food="butter-unsalted" was="200 g">9 oz</ingredient>)",
    .good = R"(    <ingredient food="butter-unsalted" was="200 g">7 oz</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
