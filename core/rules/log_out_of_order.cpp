#include "core/rules/registry.h"

namespace tamis::rules {

/// Said of a log or a batch record (core/record); the check of a fiche never says it.
const Rule log_out_of_order = {
    .id = "log-out-of-order",
    .severity = base::Severity::error,
    .topic = "record",
    .summary = "a reading that comes before the one above it, or at the same moment",
    .explanation = R"(Loggers write as time goes. A reading that goes back in time means that two logs were put together, that a clock was set, or
that somebody typed; nothing is sorted, since whichever of the two is wrong would then decide. A log by the clock alone may pass
midnight.)",
    .bad = R"(time,core °C
10:15,61.2
10:20,63.4
10:18,62.9)",
    .good = R"(time,core °C
10:15,61.2
10:18,62.9
10:20,63.4)",
    .source = "common practice: readings come in the order they were taken",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
