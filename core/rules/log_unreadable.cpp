#include "core/rules/registry.h"

namespace tamis::rules {

/// Said of a log or a batch record (core/record); the check of a fiche never says it.
const Rule log_unreadable = {
    .id = "log-unreadable",
    .severity = base::Severity::error,
    .topic = "record",
    .summary = "a row or a file of a thermometer log that cannot be read",
    .explanation = R"(A log is a heading that names a time and a temperature, and a line for each reading (RFC 4180, with commas, semicolons or
tabs). A row whose time or temperature cannot be read is left out and named, never guessed at, and no verdict goes across it:
what the food did there is not known. A bare number as a time is read when the heading says what it counts: seconds or minutes.)",
    .bad = R"(time,core °C
10:15,61.2
10:16,---
10:17,62.0)",
    .good = R"(time,core °C
10:15,61.2
10:16,61.6
10:17,62.0)",
    .source = "RFC 4180 for the table; ISO 8601 for days and times",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
