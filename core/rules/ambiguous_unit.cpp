#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

/// A fiche that declares no system has one fault, however many cups are in it.
void run(Check& check) {
  base::Finding* first = nullptr;
  for_each_reading_fault(check, "ambiguous-unit", [&](const fiche::Statement& statement) {
    if (first == nullptr) {
      first = &say_reading_fault(check, statement);
    } else {
      first->related.push_back({statement.fault->where, statement.fault->message, {}, {}, {}});
    }
  });
}

}  // namespace

/// A bare cup, pint, ounce or spoon in a file that does not say whose. Said once a file; the others are related places.
const Rule ambiguous_unit = {
    .id = "ambiguous-unit",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a cup, pint, fluid ounce or spoon, and nothing says whose",
    .explanation = R"(A US cup is 236.6 ml, a metric one 250 ml, an imperial one 284.1 ml; a US pint is 473 ml, an imperial
one 568 ml. A fiche that says "2 cups" and not whose may be a fifth off, and no tool should guess.

Say it once for the whole fiche with units="us", units="imperial" or units="metric", or write grams and millilitres.
The finding marks the first such measure and names the others.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" lang="en">
  <title>Vanilla sauce</title>
  <component id="sauce" title="Sauce">
    <ingredient food="milk-whole">2 cups</ingredient>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" lang="en" units="us">
  <title>Vanilla sauce</title>
  <component id="sauce" title="Sauce">
    <ingredient food="milk-whole">2 cups</ingredient>
  </component>
</fiche>)",
    .source = "NIST Handbook 44, Appendix C (US); UK Weights and Measures Act 1985, Schedule 1 (imperial)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
