#include "core/rules/registry.h"

namespace tamis::rules {

/// Said of a log or a batch record (core/record); the check of a fiche never says it.
const Rule record_incomplete = {
    .id = "record-incomplete",
    .severity = base::Severity::error,
    .topic = "record",
    .summary = "a batch record with a place left empty, or a miss without what was done about it",
    .explanation = R"(A record is worth what stands in it: day and batch, the supplier's lot of each food, a reading with its time and initials for each
control point, what was done where a limit was missed, how the probe was checked, and who looked it all through. What is empty is
named, so that whoever was there can still fill it in; nothing is filled in for them.)",
    .bad = R"(part,of,asked,found,time,initials,action taken
batch,date,,,,,)",
    .good = R"(part,of,asked,found,time,initials,action taken
batch,date,,2026-11-03,,,)",
    .source = "CXC 1-1969 (Codex, General Principles of Food Hygiene), HACCP principles 4, 5 and 7: monitoring, corrective action, records; from memory",
    .schemas = "",
    .run = nullptr,
};

}  // namespace tamis::rules
