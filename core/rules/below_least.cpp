#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule below_least = {
    .id = "below-least",
    .severity = base::Severity::warning,
    .topic = "scaling",
    .summary = "less than a machine or vessel works with",
    .explanation = R"(A whisk that does not reach the whites does not whip them, and a churn with a cup of cream in it makes butter.
The least is made, and the rest kept; or it is done by hand.)",
    .bad = R"(    <ingredient id="flour" food="flour-wheat-white">800 g</ingredient>
    <step do="sift" on="mixer">Turn the <use of="flour">flour</use> over.</step>)",
    .good = R"(    <ingredient id="flour" food="flour-wheat-white">3 kg</ingredient>
    <step do="sift" on="mixer">Turn the <use of="flour">flour</use> over.</step>)",
    .source = "common practice: about 1 kg a litre",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
