#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule not_converted = {
    .id = "not-converted",
    .severity = base::Severity::warning,
    .topic = "conversion",
    .summary = "a figure could not be converted",
    .explanation = R"(A conversion leaves a figure it cannot read as it stands, and says which. Where nobody declared whose cup, pint or
spoon is meant, the new units would turn that name into a guess: then nothing at all is converted, and the finding is
an error. State units on the fiche, or correct the figure, and convert again.)",
    .bad = R"(    <ingredient food="milk-whole">2 jugfuls</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">2 l</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
