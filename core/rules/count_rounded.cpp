#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule count_rounded = {
    .id = "count-rounded",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "pieces cannot be parted as finely as the batch asks",
    .explanation = R"(A bay leaf or a clove stays whole, a vanilla pod or a lemon is halved at the finest. The count that can be done
is written, and how far it is from the exact one is said where the food bears no such error. Where a weight
stands beside the count, the weight is the one to go by.)",
    .bad = R"(    <ingredient food="bay-leaf">4</ingredient>)",
    .good = R"(    <ingredient food="bay-leaf">6</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
