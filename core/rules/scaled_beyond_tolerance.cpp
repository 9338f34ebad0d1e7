#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule scaled_beyond_tolerance = {
    .id = "scaled-beyond-tolerance",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "the tools measure the scaled figure too coarsely for this food",
    .explanation = R"(Scales, spoons and cups have steps. How far a figure may be off for it depends on what the food does: 1 % for
gelatine, salt, yeast and leavening (then this is a warning), more for a garnish. The advice is a better way to
measure; a larger batch, of which the rest is kept, is another.)",
    .bad = R"(    <ingredient food="yeast-active-dry">0.5 g</ingredient>)",
    .good = R"(    <ingredient food="yeast-active-dry">12 g</ingredient>)",
    .source = "the food's tolerance (common practice)",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
