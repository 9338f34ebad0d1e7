#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule conversion_beyond_tolerance = {
    .id = "conversion-beyond-tolerance",
    .severity = base::Severity::advice,
    .topic = "conversion",
    .summary = "the tools measure the converted figure too coarsely for this food",
    .explanation = R"(Spoons, cups and scales have steps. How far a figure may be off for it depends on what the food does: 1 % for gelatine,
salt, yeast and leavening (then this is a warning), more for a garnish. The advice is a better way to measure. It is
also said where a figure is too small for the system's measures and stays as the author wrote it.)",
    .bad = R"(    <ingredient food="saffron">0.05 g</ingredient>)",
    .good = R"(    <ingredient food="butter-unsalted">227 g</ingredient>)",
    .source = "the food's tolerance (common practice)",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
