#include <string>

#include "core/rules/balance.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Node;

void look_at(Check& check, Node owner, Node yield, const flow::Grams& made) {
  for (const At at : {At::mass, At::volume}) {
    const fiche::Statement* said = check.fiche.statement(yield, at);
    const auto stated = said == nullptr || !said->amount ? std::nullopt : grams_stated(*said->amount);
    if (!stated) continue;
    const std::string how(allowance_for(check, owner, yield).difference(*stated, made));
    if (how.empty()) continue;
    check.say(said->where, "the yield of " + said->text + " is " + how + " what is made: " + grams_text(made),
              how == "more than" ? "correct the yield or the amounts; nothing comes of nothing"
                                 : "correct the yield, or state what is lost: <loss what=\"…\" amount=\"…\"/>");
    return;
  }
}

void run(Check& check) {
  for_each_yield(check, [&](Node owner, Node yield, const flow::Grams& made) { look_at(check, owner, yield, made); });
}

}  // namespace

/// yield/@mass or @volume against the flow's total.
const Rule total_against_yield = {
    .id = "total-against-yield",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "a yield that the amounts do not come to",
    .explanation = R"(The card says 1.2 kg of cream and the ingredients come to 900 g: whoever plans a service by the card is one tray short.

What a component or the fiche states by weight (or by volume, at 0.5 to 1.35 g/ml) is held against what goes into it
less the losses that are stated. Allowed for: 5 % over; 10 % under, 40 % under where food is heated and no loss in
cooking is stated, 15 % where one is. Not said where food takes up the water it boils in, nor where a mass is not
known.)",
    .bad = R"(    <yield mass="1.2 kg"/>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">100 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .good = R"(    <yield mass="580 g"/>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">100 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
