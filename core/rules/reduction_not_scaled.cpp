#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule reduction_not_scaled = {
    .id = "reduction-not-scaled",
    .severity = base::Severity::warning,
    .topic = "scaling",
    .summary = "a reduction does not follow the batch in the same pan",
    .explanation = R"(A pan boils off by its surface and its fire, not by what is in it: three times the stock in the same pan takes
more than three times as long, and by then tastes of it. The figure to go by is what is left, by weight or
measure.)",
    .bad = R"(    <ingredient id="stock" food="stock-chicken">1 l</ingredient>
    <step do="reduce" on="hob" reduce-to="1/2">Boil the <use of="stock">stock</use> down by half.</step>)",
    .good = R"(    <ingredient id="stock" food="stock-chicken">1 l</ingredient>
    <step do="boil" on="hob">Bring the <use of="stock">stock</use> to the boil.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
