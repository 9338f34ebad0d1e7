#include "core/rules/registry.h"

namespace tamis::rules {

/// Said by a scaling (core/change/scale.h); the check never says it.
const Rule seasoning_not_scaled = {
    .id = "seasoning-not-scaled",
    .severity = base::Severity::advice,
    .topic = "scaling",
    .summary = "salt and spices were multiplied like the rest",
    .explanation = R"(Seasoning multiplied by four and more is often too much: less boils away from a large pot, and spices draw
longer. In doughs, brines and cures the exact amount stands. Where the dish can be tasted, three quarters go in
first.)",
    .bad = R"(    <ingredient food="salt">20 g</ingredient>)",
    .good = R"(    <ingredient food="carrot">500 g</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
