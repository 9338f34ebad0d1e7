#include "core/rules/registry.h"

namespace tamis::rules {

/// Said of a log or a batch record (core/record); the check of a fiche never says it.
const Rule log_gap = {
    .id = "log-gap",
    .severity = base::Severity::warning,
    .topic = "record",
    .summary = "a time without readings, much longer than between the others",
    .explanation = R"(Where nothing was read for more than three times as long as is usual in the log, and more than a minute, nobody knows what the
food did. Nothing is drawn across it: a hold that would need it is not shown, heat that would fall into it is not counted.)",
    .bad = R"(time,core °C
10:00,64.0
10:01,64.1
10:02,64.1
10:03,64.2
10:31,64.4
10:32,64.4)",
    .good = R"(time,core °C
10:00,64.0
10:05,64.1
10:10,64.1
10:15,64.2
10:20,64.4
10:25,64.4)",
    .source = "common practice: three times the usual interval, ours",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
