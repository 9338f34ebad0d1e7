#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule whisking_not_scaled = {
    .id = "whisking-not-scaled",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "mixing and whisking times are those of the author's bowl",
    .explanation = R"(How long a foam or a dough takes depends on the machine, its speed and how full the bowl is. A time stated for
one bowl is left as it is; the cue decides.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <step do="whip" on="mixer">Whip the <use of="cream">cream</use> for <time>4 min</time>.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <step do="whip" on="mixer">Whip the <use of="cream">cream</use> <until>to soft peaks</until>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
