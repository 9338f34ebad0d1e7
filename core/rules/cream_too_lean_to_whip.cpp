#include "core/rules/cream_to_whip.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

constexpr double margin = 2;  // percent of fat: what packs round

void run(Check& check) {
  for (const WhippedCream& cream : whipped_creams(check)) {
    if (cream.fat_percent >= figures::cream_to_whip_fat.low - margin) continue;
    const base::Span where = check.document.span(check.flow.things[static_cast<std::size_t>(cream.thing)].node);
    check.say(where, "cream that is to stand needs 30 % fat; this has " + percent_text(cream.fat_percent, cream.fat_percent),
              "take cream of 30 to 36 %, or foam it in a siphon");
  }
}

}  // namespace

/// Single cream, to be whipped.
const Rule cream_too_lean_to_whip = {
    .id = "cream-too-lean-to-whip",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "cream that is to be whipped and has too little fat to stand",
    .explanation = R"(Below about 30 % fat there is not enough of it to wall the bubbles in; the cream froths and
runs. Milk that is whipped with it counts. Said of cream alone or with sugar and flavour; not for the siphon, and not
where egg, chocolate or gelatine hold it up.)",
    .bad = R"(    <ingredient id="cream" food="cream-single">500 g</ingredient>
    <step do="whip">Whip the <use of="cream">cream</use> until it stands in soft peaks.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-30">500 g</ingredient>
    <step do="whip">Whip the <use of="cream">cream</use> until it stands in soft peaks.</step>)",
    .source = "21 CFR 131.157: light whipping cream has 30 % milkfat at least, from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
