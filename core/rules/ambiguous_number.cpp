#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

void run(Check& check) { say_reading_faults(check, "ambiguous-number"); }

}  // namespace

/// "1,500" or "1.500" where the language leaves open whether the sign divides thousands or decimals.
const Rule ambiguous_number = {
    .id = "ambiguous-number",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a comma or point that may mean thousands or decimals",
    .explanation = R"("1,500 g" is one and a half kilograms to an English reader and one and a half grams to a French one:
a factor of a thousand.

Write the figure without a sign between the thousands (1500 g), or say what the sign means with decimal="point" or
decimal="comma" on the fiche.)",
    .bad = R"(    <ingredient food="milk-whole">1,500 g</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">1500 g</ingredient>)",
    .source = "ISO 80000-1, 7.3.2 (either sign is a decimal sign)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
