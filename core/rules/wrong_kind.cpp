#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) { say_reading_faults(check, "wrong-kind"); }

}  // namespace

/// A good measure of another kind than may stand there.
const Rule wrong_kind = {
    .id = "wrong-kind",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a measure of the wrong kind",
    .explanation = R"(Degrees where an amount belongs, grams where a time belongs: often two fields were swapped, or the
temperature of an ingredient was written as its amount (that is what at="…" is for).)",
    .bad = R"(    <step hands="10 g">Whisk the yolks.</step>)",
    .good = R"(    <step hands="10 min">Whisk the yolks.</step>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
