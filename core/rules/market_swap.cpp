#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule market_swap = {
    .id = "market-swap",
    .severity = base::Severity::advice,
    .topic = "conversion",
    .summary = "what can be bought in the reader's market, and what remains a risk",
    .explanation = R"(Flour, cream, butter, eggs, gelatine, sugar and yeast are sold under other names and at other strengths elsewhere. The
conversion puts in what can be bought there, recalculates the amount where there is a rule (gelatine by the square root
of the strengths, butter by its fat, fresh yeast to a third of instant), keeps the author's own beside it, and says
what the rule does not cover. Test one batch before service.)",
    .bad = R"(    <ingredient food="gelatine-leaf" bloom="200">9 g</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">500 g</ingredient>)",
    .source = "the table of markets (core/change/market.inc), each row with its source",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
