#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule leavening_not_scaled = {
    .id = "leavening-not-scaled",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "yeast or leavening was multiplied like the rest",
    .explanation = R"(From four times the batch on, a dough holds its own warmth and works faster; at a quarter and less it cools and
works more slowly. The amount is multiplied exactly, since nobody can tell the right one without a trial: watch
the dough, not the clock.)",
    .bad = R"(    <ingredient food="yeast-fresh">20 g</ingredient>)",
    .good = R"(    <ingredient food="flour-wheat-white">500 g</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
