#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule oven_mode_changed = {
    .id = "oven-mode-changed",
    .severity = base::Severity::advice,
    .topic = "conversion",
    .summary = "an oven figure now is for another kind of oven",
    .explanation = R"(A fan oven is set 20 °C or 25 °F lower than a static one for the same bake. The figure is converted by that rule; times
are not, as they depend on the load and the oven. Look early the first time, and write a trial.)",
    .bad = R"(    <step>Bake at <oven-temp mode="static">180 °C</oven-temp> for <time>30 min</time>.</step>)",
    .good = R"(    <step>Bake at <oven-temp mode="fan">160 °C</oven-temp> for <time>30 min</time>.</step>)",
    .source = "common practice: 20 °C or 25 °F less with a fan",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
