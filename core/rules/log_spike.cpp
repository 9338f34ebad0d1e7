#include "core/rules/registry.h"

namespace tamis::rules {

/// Said of a log or a batch record (core/record); the check of a fiche never says it.
const Rule log_spike = {
    .id = "log-spike",
    .severity = base::Severity::error,
    .topic = "record",
    .summary = "a reading that no food makes: a leap and back, or beyond what a probe reads",
    .explanation = R"(A core has mass and follows slowly. A reading or two that leap 10 K away and back within five minutes are the probe's: pulled
out, wet in its plug, broken. They are named and left out, and no verdict goes across them, whether they would have helped or
hurt.)",
    .bad = R"(time,core °C
10:00,64.0
10:01,64.1
10:02,91.5
10:03,64.3
10:04,64.4)",
    .good = R"(time,core °C
10:00,64.0
10:01,64.1
10:02,64.2
10:03,64.3
10:04,64.4)",
    .source = "common practice: 10 K within five minutes, ours",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
