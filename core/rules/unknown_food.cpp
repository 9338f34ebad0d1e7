#include <algorithm>
#include <array>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/food/food.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/value_pattern.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

std::string advice_for(const Check& check, std::string_view id, std::string_view name) {
  std::vector<std::string_view> ids;
  for (const auto& own : check.kitchen.foods) ids.push_back(own->id);
  for (const food::Food& one : food::foods()) ids.push_back(one.id);
  // One slip away it is the id that was meant; further off, names that hold the word ("buter": the butters) come
  // before an id that merely looks alike ("water").
  const std::string_view alike = near_miss(id, ids).word;
  std::vector<std::string_view> near;
  if (!alike.empty() && base::edit_distance(id, alike, 1) <= 1) near.push_back(alike);
  std::string words(id);
  std::replace(words.begin(), words.end(), '-', ' ');
  for (const std::string_view text : {std::string_view(words), name}) {
    if (text.empty()) continue;
    bool holds_a_known_word = false;
    for (const food::Match& match : food::look_up(text, check.fiche.language, 3)) {
      if (match.how == food::Match::How::near && holds_a_known_word) break;  // "house-flour" is a flour, not a goose
      holds_a_known_word = match.how != food::Match::How::near;
      if (std::find(near.begin(), near.end(), match.food->id) == near.end()) near.push_back(match.food->id);
    }
  }
  if (near.empty() && !alike.empty()) near.push_back(alike);
  if (near.empty()) return "look for it with tamis foods, or add it to the kitchen file as <food>";
  if (near.size() > 4) near.resize(4);
  return "write " + list_of(near) + ", or add it to the kitchen file as <food>";
}

/// In a kitchen file or a plugin's manifest the foods it gives itself count too.
bool given_here(const Check& check, std::string_view id) {
  if (check.document.root() == fiche::none || check.document.el(check.document.root()) == El::fiche) return false;
  return std::any_of(check.structure.elements.begin(), check.structure.elements.end(), [&](const auto& element) {
    return element.rule->el == El::food && check.document.get(element.node, At::id) == id;
  });
}

void run(Check& check) {
  for (const Structure::Attribute& given : check.structure.attributes) {
    if (given.rule->value != fiche::Value::food || given.rule->at == At::id || given.rule->at == At::was_food) continue;
    const std::string_view id = base::trimmed(check.document.attribute_value(given.attribute));
    if (!fits(fiche::Value::food, id) || check.kitchen.find_food(id) != nullptr || given_here(check, id)) continue;
    check.say(check.document.value_span(given.attribute), "no food is called " + quoted(id),
              advice_for(check, id, check.document.get(given.node, At::name)));
  }
}

}  // namespace

/// A food that neither the table nor the kitchen file has.
const Rule unknown_food = {
    .id = "unknown-food",
    .severity = base::Severity::warning,
    .topic = "document",
    .summary = "a food that neither the table nor the kitchen has",
    .explanation = R"(The food's id leads to its density, the weight of a piece and its allergens. With an id that nobody
has, cups cannot be turned into grams and an allergen may be missing from the list.

Take the id that the advice names, look for one with "tamis foods", or give the food to the kitchen file with <food>.
A food that has no id yet can stand without one: leave the attribute out and write the name.)",
    .bad = R"(    <ingredient food="milk-hole">300 g</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">300 g</ingredient>)",
    .source = "the table of foods (tamis foods)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
