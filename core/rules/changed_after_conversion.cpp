#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule changed_after_conversion = {
    .id = "changed-after-conversion",
    .severity = base::Severity::warning,
    .topic = "conversion",
    .summary = "a converted figure was changed before it was converted again",
    .explanation = R"(A conversion starts from the author's own figure, which was kept beside the new one. Where somebody has since changed
the new one, by more than kitchen rounding could do, that change is what the kitchen works by: it counts as the
author's figure now, and the kept one goes. Put the old figure back by hand if the change was a slip.)",
    .bad = R"(    <ingredient food="butter-unsalted" was="200 g">11 oz</ingredient>)",
    .good = R"(    <ingredient food="butter-unsalted" was="200 g">7 oz</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
