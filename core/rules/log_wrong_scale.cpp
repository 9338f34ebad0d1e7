#include "core/rules/registry.h"

namespace tamis::rules {

/// Said of a log or a batch record (core/record); the check of a fiche never says it.
const Rule log_wrong_scale = {
    .id = "log-wrong-scale",
    .severity = base::Severity::error,
    .topic = "record",
    .summary = "readings that are on the other scale than they are said to be",
    .explanation = R"(A core of 165 is a good roast in Fahrenheit and a cinder in Celsius. Where the readings lie beyond what the food of the fiche
ever is, and would fit on the other scale, nothing is judged: say which it is with --scale. One reading with a scale of its own
among others is left out.)",
    .bad = R"(time,core °C
10:00,141
10:10,152
10:20,165)",
    .good = R"(time,core °F
10:00,141
10:10,152
10:20,165)",
    .source = "common practice: no core of food that holds water is above 105 °C",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
