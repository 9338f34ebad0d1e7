#include "core/rules/cream_to_whip.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr double margin = 3;  // K

void run(Check& check) {
  for (const WhippedCream& cream : whipped_creams(check)) {
    if (cream.celsius.low <= figures::cream_whips.high + margin) continue;
    check.say(cream.where, "cream whips at " + text_of(figures::cream_whips) + ", and this is at " + degrees(cream.celsius.low),
              "chill cream and bowl to 4 °C: warm, its fat smears, and it turns to butter before it stands");
  }
}

}  // namespace

/// Cream at 16 °C into the mixer.
const Rule cream_too_warm_to_whip = {
    .id = "cream-too-warm-to-whip",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "cream that is whipped warmer than it stands",
    .explanation = R"(Whipped cream is held by fat that has set. Above about 10 °C too much of it is soft: the cream
takes little air and goes over to butter. Said of cream alone or with sugar and flavour whose temperature is stated,
or follows from the steps before; not for the siphon, where gas makes the foam, nor with egg, chocolate or gelatine in
it.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <step do="whip">Whip the <use of="cream" at="16 °C">cream</use> until it stands in soft peaks.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <step do="whip">Whip the <use of="cream" at="4 °C">cream</use> until it stands in soft peaks.</step>)",
    .source = "common practice: bowl and cream cold, 2 to 7 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
