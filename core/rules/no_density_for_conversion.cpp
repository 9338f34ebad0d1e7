#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule no_density_for_conversion = {
    .id = "no-density-for-conversion",
    .severity = base::Severity::advice,
    .topic = "conversion",
    .summary = "mass and volume cannot be crossed for this food",
    .explanation = R"(By mass or by volume, a conversion needs the weight of a cup of the food. Where the table has none, or the ingredient
names no food, the figure stays the kind it is. Weigh a cup of it once and state it in the kitchen file:
density="1 cup = 125 g". Nothing is missing where the food is not measured that way, a joint of meat by the cup.)",
    .bad = R"(    <ingredient name="the house's crumble">200 g</ingredient>)",
    .good = R"(    <ingredient food="flour-wheat-white">125 g</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
