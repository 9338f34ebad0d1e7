#include <string>

#include "core/rules/balance.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Node;

const fiche::Statement* number_of(const Check& check, Node yield) {
  for (const At at : {At::portions, At::pieces}) {
    const fiche::Statement* said = check.fiche.statement(yield, at);
    if (said != nullptr && said->amount) return said;
  }
  return nullptr;
}

void look_at(Check& check, Node owner, Node yield, const flow::Grams& made) {
  const fiche::Statement* each = check.fiche.statement(yield, At::each);
  const fiche::Statement* number = number_of(check, yield);
  const auto grams = each == nullptr || !each->amount ? std::nullopt : grams_stated(*each->amount);
  if (number == nullptr || !grams) return;
  const fiche::Statement* spare = check.fiche.statement(yield, At::spare);
  const double pieces = number->amount->middle_base().approximate() +
                        (spare != nullptr && spare->amount ? spare->amount->middle_base().approximate() : 0);
  const double about = each->amount->about ? 0.1 : 0;
  const flow::Grams stated{pieces * grams->low * (1 - about), pieces * grams->high * (1 + about)};
  const std::string how(allowance_for(check, owner, yield).difference(stated, made));
  if (how.empty()) return;
  check.say(each->where, figure_text(pieces, measure::Kind::count) + " of " + each->text + " are " + how + " what is made: " +
                             grams_text(made) + ", " +
                             grams_text({made.low / pieces, made.high / pieces}) + " each",
            "correct the portion, their number or the amounts; state what is lost with <loss what=\"…\" amount=\"…\"/>")
      .related.push_back({number->where, "how many", {}, {}, {}});
}

void run(Check& check) {
  for_each_yield(check, [&](Node owner, Node yield, const flow::Grams& made) { look_at(check, owner, yield, made); });
}

}  // namespace

/// yield/@portions (or @pieces) times @each against the flow's total.
const Rule portions_against_total = {
    .id = "portions-against-total",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "portions that the amounts do not come to",
    .explanation = R"(Twenty-four portions of 115 g need 2.76 kg on the tray, and the recipe makes 2.1 kg: the last guests get a spoonful.

Portions (or pieces) and spare ones times what one weighs are held against what is made, less the losses that the yield
states. Allowed for: 5 % over, "about" 10 % more; 10 % under, 40 % under where food is heated and no loss in cooking is
stated, 15 % where one is. A portion by volume is taken at 0.5 to 1.35 g/ml.)",
    .bad = R"(    <yield portions="10" each="95 g"/>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">100 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .good = R"(    <yield portions="6" each="95 g"><loss what="bowl" amount="3 %"/></yield>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">100 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
