#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule surplus = {
    .id = "surplus",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "whole eggs or packs leave something over",
    .explanation = R"(The weight stays exact; eggs are broken and packs are opened whole. What is over is named, so that it is kept
and used instead of going in: five grams of egg too many make another sponge. A kitchen that counts its eggs
says eggs="whole", one that weighs them eggs="grams"; by weight nothing is said of eggs.)",
    .bad = R"(    <ingredient food="egg-whole" pieces="4">200 g</ingredient>)",
    .good = R"(    <ingredient food="egg-whole" pieces="6">300 g</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
