#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) { say_reading_faults(check, "unknown-unit"); }

}  // namespace

/// A figure with a unit that no table has.
const Rule unknown_unit = {
    .id = "unknown-unit",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a unit that nobody knows",
    .explanation = R"(A unit that is not understood is never guessed at: "200 gr." might be grams or grains. The line then
has no weight, and nothing that adds up weights can count it.

Write the unit that the advice names, or one of your language (tamis measure --help lists them).)",
    .bad = R"(    <ingredient food="milk-whole">300 gx</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">300 g</ingredient>)",
    .source = "the table of units (tamis measure)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
