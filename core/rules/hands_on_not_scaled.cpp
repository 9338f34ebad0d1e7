#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule hands_on_not_scaled = {
    .id = "hands-on-not-scaled",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "hands-on times are those of the author's batch",
    .explanation = R"(Stirring twice as much takes little longer, peeling twice as much takes twice as long. Nobody knows which from
the figure alone, so hands-on times stay as the author wrote them.)",
    .bad = R"(    <ingredient id="pear" food="pear">900 g</ingredient>
    <step do="peel" hands="10 min">Peel the <use of="pear">pears</use>.</step>)",
    .good = R"(    <ingredient id="pear" food="pear">900 g</ingredient>
    <step do="peel">Peel the <use of="pear">pears</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
