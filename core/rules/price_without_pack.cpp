#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;

void run(Check& check) {
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el != fiche::El::food || check.document.find(n, At::pack) != fiche::none) continue;
    const fiche::Attr price = check.document.find(n, At::price);
    if (price == fiche::none) continue;
    check.say(check.document.attribute_span(price), "a price, and nothing says for how much",
              "add pack=\"1 kg\", a volume, or a number of pieces");
  }
}

}  // namespace

/// A kitchen food has a price and no pack.
const Rule price_without_pack = {
    .id = "price-without-pack",
    .severity = base::Severity::advice,
    .topic = "labelling",
    .summary = "a price of the kitchen file does not say for how much",
    .explanation = R"(14.50 EUR: for the bag, the box, the kilo? Without the pack no dish with that food can be costed, and the cost sheet leaves it
out of the sum.

A pack is a mass, a volume or a number of pieces: what the price buys.)",
    .bad = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps" lang="en">
  <food id="house-oats" name="oats" like="oats-rolled" price="14.50 EUR"/>
</kitchen>)",
    .good = R"(<kitchen xmlns="urn:tamis:fiche:1" name="Ferry Steps" lang="en">
  <food id="house-oats" name="oats" like="oats-rolled" price="14.50 EUR" pack="10 kg"/>
</kitchen>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
