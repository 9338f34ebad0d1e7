#include <algorithm>
#include <set>

#include "core/base/utf8.h"
#include "core/rules/agreement.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Ingredient;
using fiche::Node;

/// The batches an ingredient states an amount for, by the ids of the yields.
std::set<std::string_view> batches_of(const fiche::Document& document, Node ingredient) {
  std::set<std::string_view> out;
  for (Node c = document.first_child(ingredient); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element && document.el(c) == El::amount) {
      out.insert(base::trimmed(document.get(c, At::batch)));
    }
  }
  out.erase(std::string_view());
  return out;
}

/// An amount that grows with the batch: a figure of its own, not per portion, and of the food.
bool grows(const Check& check, const Ingredient& ingredient) {
  if (ingredient.amount < 0) return false;
  const fiche::Statement& amount = check.fiche.statements[static_cast<std::size_t>(ingredient.amount)];
  if (!amount.amount || !amount.amount->has_figure() || is_rough(*amount.amount)) return false;
  const std::string_view purpose = check.document.get(ingredient.node, At::purpose);
  return check.document.find(ingredient.node, At::per) == fiche::none && (purpose.empty() || purpose == "food");
}

std::string_view name_of(const Ingredient& ingredient) {
  if (!ingredient.name.empty()) return ingredient.name;
  return ingredient.food_id.empty() ? ingredient.id : ingredient.food_id;
}

void look_at_component(Check& check, const std::vector<const Ingredient*>& ingredients) {
  std::set<std::string_view> stated;
  for (const Ingredient* one : ingredients) stated.merge(batches_of(check.document, one->node));
  for (const std::string_view batch : stated) {
    std::vector<const Ingredient*> without;
    std::size_t with = 0;
    for (const Ingredient* one : ingredients) {
      if (batches_of(check.document, one->node).contains(batch)) {
        ++with;
      } else if (grows(check, *one)) {
        without.push_back(one);
      }
    }
    if (without.size() >= with) continue;  // a remark on one line, not a second list
    base::Finding* first = nullptr;
    for (const Ingredient* one : without) {
      if (first != nullptr) {
        first->related.push_back({check.document.head_span(one->node), "nor is this one", {}, {}, {}});
        continue;
      }
      first = &check.say(check.document.head_span(one->node),
                         quoted(name_of(*one)) + " is not given for batch " + quoted(batch) + ", others are",
                         "add <amount batch=\"" + std::string(batch) + "\">…</amount>");
    }
  }
}

void run(Check& check) {
  const auto& attributes = check.structure.attributes;
  if (std::none_of(attributes.begin(), attributes.end(), [](const auto& given) { return given.rule->at == At::batch; })) return;
  for (const Node component : check.fiche.components) {
    std::vector<const Ingredient*> ingredients;
    for (const Ingredient& one : check.fiche.ingredients) {
      if (one.component == component) ingredients.push_back(&one);
    }
    look_at_component(check, ingredients);
  }
}

}  // namespace

/// Some ingredients of a component have an amount for another batch size, and one with a figure has none. Said once a
/// batch and component; the others are related places.
const Rule batch_amount_missing = {
    .id = "batch-amount-missing",
    .severity = base::Severity::warning,
    .topic = "measure",
    .summary = "an ingredient lacks the amount for a batch that others have",
    .explanation = R"(A fiche that prints two batch sizes side by side must give both for every line: the cook who makes
100 portions would otherwise take the salt for 50.

The rule speaks where more lines have the batch than lack it. Lines without a figure ("to taste", a pinch), those given
per portion and those that are not part of the food (bath water, flour for the bench) need none.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Vanilla sauce</title>
  <yield portions="10"/>
  <yield id="large" portions="50"/>
  <component id="sauce" title="Sauce">
    <ingredient food="milk-whole">1 l<amount batch="large">5 l</amount></ingredient>
    <ingredient food="egg-yolk">200 g<amount batch="large">1 kg</amount></ingredient>
    <ingredient food="sugar-white">100 g</ingredient>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="example" units="metric">
  <title>Vanilla sauce</title>
  <yield portions="10"/>
  <yield id="large" portions="50"/>
  <component id="sauce" title="Sauce">
    <ingredient food="milk-whole">1 l<amount batch="large">5 l</amount></ingredient>
    <ingredient food="egg-yolk">200 g<amount batch="large">1 kg</amount></ingredient>
    <ingredient food="sugar-white">100 g<amount batch="large">500 g</amount></ingredient>
  </component>
</fiche>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
