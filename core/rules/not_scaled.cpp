#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule not_scaled = {
    .id = "not-scaled",
    .severity = base::Severity::warning,
    .topic = "scaling",
    .summary = "a figure or words could not follow the new batch",
    .explanation = R"(A figure that cannot be read cannot be multiplied: what is left as it was would be wrong in a batch that grows
round it. Where it is the amount of an ingredient, or the wish itself cannot be met (no yield to go by, an
ingredient that is not there), nothing is scaled and the finding is an error. Words of the yield that speak of
the batch as it was ("two cases") are left out.)",
    .bad = R"(    <ingredient food="milk-whole">1 l!</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">1 l</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
