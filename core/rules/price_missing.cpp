#include <algorithm>
#include <cmath>

#include "core/rules/registry.h"
#include "core/tally/cost.h"

namespace tamis::rules {
namespace {

using Open = tally::CostLine::Open;

std::string_view why(Open open) {
  switch (open) {
    case Open::no_pack: return "a price without a pack that can be weighed for ";
    case Open::other_currency: return "a price in another currency for ";
    default: return "no price in the kitchen file for ";
  }
}

std::string grams_text(double grams) { return std::to_string(std::lround(grams)) + " g"; }

void run(Check& check) {
  // Who asks for a cost says how the dish is sold.
  const fiche::Kitchen::Sale* sale = check.fiche.id.empty() ? nullptr : check.kitchen.sale_of(check.fiche.id);
  if (sale == nullptr) return;
  const tally::Makeup makeup = tally::read_makeup(check.fiche, check.flow, check.library);
  const tally::Cost cost = tally::cost_of(makeup, check.kitchen, check.fiche.id, {});
  std::vector<const tally::CostLine*> missing;
  for (const tally::CostLine& line : cost.foods) {
    const bool priceless = line.open == Open::no_price || line.open == Open::no_pack || line.open == Open::other_currency;
    const auto same = [&](const tally::CostLine* other) { return other->name == line.name; };
    if (priceless && std::none_of(missing.begin(), missing.end(), same)) missing.push_back(&line);
  }
  // A leaf of bay in a pot changes no cost; the export names it all the same.
  constexpr double worth_a_word = 0.01;
  if (missing.empty() || cost.unpriced_g < worth_a_word * cost.all_g) return;
  std::string names;
  for (std::size_t i = 0; i < missing.size() && i < 3; ++i) names += (i == 0 ? "" : ", ") + missing[i]->name;
  if (missing.size() > 3) names += " …";
  const std::string said = (missing.size() == 1 ? std::string(why(missing.front()->open)) : "no price counts for ") + names;
  const fiche::Node title = check.document.child(check.document.root(), fiche::El::title);
  check.say(check.document.head_span(title == fiche::none ? check.document.root() : title),
            said + ": " + grams_text(cost.unpriced_g) + " of the " + grams_text(cost.all_g) + " that are bought",
            "give <food id=\"…\"> in the kitchen file its price and pack, or take the <sale> out until the cost is wanted");
}

}  // namespace

/// The kitchen sells the dish, and foods in it have no price.
const Rule price_missing = {
    .id = "price-missing",
    .severity = base::Severity::advice,
    .topic = "labelling",
    .summary = "a dish that the kitchen sells has foods without a price",
    .explanation = R"(The kitchen file says what a portion is sold for, so somebody asks what it costs; a food without a price makes the answer
too low. `tamis export --as cost` names it and counts without it.

Asked only of a fiche that a <sale> of the kitchen file names. Counted as without a price: none in the kitchen file, a
price without a pack that can be weighed, a price in another currency than the first. Not asked: tap water, pinches, and
foods that together are under 1 % of what is bought.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="honey" food="honey" name="honey">100 g</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="honey">honey</use> cold.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="salt" food="salt" name="salt">to taste</ingredient>
    <step>Whisk the <use of="cream">cream</use> and <use of="salt">salt</use> cold.</step>)",
    .source = "common practice",
    .schemas = "",
    .kitchen = R"(<food id="cream-35" name="cream" like="cream-35" price="5.20 EUR" pack="1 l"/><sale fiche="example" price="6 EUR"/>)",
    .run = run,
};

}  // namespace tamis::rules
