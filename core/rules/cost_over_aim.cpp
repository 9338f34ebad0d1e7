#include <algorithm>
#include <cmath>

#include "core/rules/registry.h"
#include "core/tally/cost.h"

namespace tamis::rules {
namespace {

std::string percent(base::Ratio share) {
  const double tenths = std::round(share.approximate() * 1000) / 10;
  std::string out = std::to_string(std::lround(tenths * 10) / 10);
  if (const long rest = std::lround(tenths * 10) % 10; rest != 0) out += "." + std::to_string(rest);
  return out + " %";
}

void run(Check& check) {
  const fiche::Kitchen::Sale* sale = check.fiche.id.empty() ? nullptr : check.kitchen.sale_of(check.fiche.id);
  if (sale == nullptr || !sale->aim) return;
  const tally::Makeup makeup = tally::read_makeup(check.fiche, check.flow, check.library);
  const tally::Cost cost = tally::cost_of(makeup, check.kitchen, check.fiche.id, {});
  if (!cost.food_share || !(*cost.food_share > *sale->aim)) return;
  const auto dearer = [](const tally::CostLine& a, const tally::CostLine& b) {
    return a.cost.value_or(base::Ratio(0)) < b.cost.value_or(base::Ratio(0));
  };
  const auto dearest = std::max_element(cost.foods.begin(), cost.foods.end(), dearer);
  std::string most;
  if (dearest != cost.foods.end() && dearest->cost) most = "; the dearest line is " + dearest->name + ", " + percent(*dearest->cost / cost.food) + " of it";
  const fiche::Node title = check.document.child(check.document.root(), fiche::El::title);
  check.say(check.document.head_span(title == fiche::none ? check.document.root() : title),
            "the food of a portion is " + percent(*cost.food_share) + " of its price without tax, the house wants at most " + percent(*sale->aim),
            "tamis export --as cost shows where it goes" + most);
}

}  // namespace

/// The food costs more of the selling price than the house wants.
const Rule cost_over_aim = {
    .id = "cost-over-aim",
    .severity = base::Severity::advice,
    .topic = "labelling",
    .summary = "the food costs more of the selling price than the house wants",
    .explanation = R"(The kitchen file says what a portion is sold for and how much of that, without the tax, the food may cost. By the latest
prices it costs more; a food without a price would only make it more still.

Asked of a fiche that a <sale> with an aim names. Hands and packaging are not in this share; `tamis export --as cost` shows
them beside it.)",
    .bad = R"(    <yield portions="5"/>
    <ingredient id="cream" food="cream-35">1 kg</ingredient>
    <step>Whip the <use of="cream">cream</use>.</step>)",
    .good = R"(    <yield portions="20"/>
    <ingredient id="cream" food="cream-35">1 kg</ingredient>
    <step>Whip the <use of="cream">cream</use>.</step>)",
    .source = "common practice: the house's own aim",
    .schemas = "",
    .kitchen = R"(<food id="cream-35" name="cream" like="cream-35" price="5.20 EUR" pack="1 kg"/><sale fiche="example" price="3.30 EUR" tax="10 %" aim="25 %"/>)",
    .run = run,
};

}  // namespace tamis::rules
