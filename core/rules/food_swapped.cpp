#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a swap (core/change/swap.h); the check never says it.
const Rule food_swapped = {
    .id = "food-swapped",
    .severity = base::Severity::advice,
    .topic = "conversion",
    .summary = "what stands in for a food, what it changes in the whole, and where sentences name it",
    .explanation =
        R"(A swap (tamis convert --swap) keeps what the food is there for: the setting power of gelatine, the fat of butter
and cream, the solids of sugar, the cocoa of chocolate, the raising power of yeast, the weight of egg out of its shell.
What it can't keep is said with its figure: water, fat, milk solids, sweetness. The sentences are left as the author wrote
them; those that name the food are pointed at.

One strength of gelatine to another goes by the square root of the strengths; a kitchen that trusts its maker's linear
table sets <rule id="food-swapped" value="linear"/>. Test one batch before service.)",
    .bad = R"(    <ingredient id="leaf" food="gelatine-leaf" bloom="200">9 g</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">500 g</ingredient>)",
    .source = "the kind of swap (core/change/swap_*.cpp), each with its source",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
