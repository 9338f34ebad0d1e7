#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule batch_split = {
    .id = "batch-split",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "more than a machine or vessel takes at once",
    .explanation = R"(The batch is divided into equal ones: a full bowl and a small rest would not work alike. Food is taken at about
1 kg a litre where a machine states litres. When the equal batches come under the least that the machine works
with, the finding is a warning.)",
    .bad = R"(    <ingredient id="flour" food="flour-wheat-white">4 kg</ingredient>
    <step do="sift" on="mixer">Turn the <use of="flour">flour</use> over.</step>)",
    .good = R"(    <ingredient id="flour" food="flour-wheat-white">1 kg</ingredient>
    <step do="sift" on="mixer">Turn the <use of="flour">flour</use> over.</step>)",
    .source = "common practice: about 1 kg a litre",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
