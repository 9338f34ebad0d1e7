#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a conversion (core/change/convert.h); the check never says it.
const Rule oven_mode_unknown = {
    .id = "oven-mode-unknown",
    .severity = base::Severity::advice,
    .topic = "conversion",
    .summary = "an oven figure stays, as nothing leads from its oven to the wanted one",
    .explanation = R"(Only figures for a fan or a static oven can be turned into each other by rule. Where the fiche does not say which oven a
figure is for, or where it is for a deck, combi or steam oven, it stays as it is. State the mode, or test the bake in
the other oven and write that figure beside it.)",
    .bad = R"(    <step>Bake at <oven-temp mode="deck">220 °C</oven-temp>.</step>)",
    .good = R"(    <step>Bake at <oven-temp mode="fan">200 °C</oven-temp>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
