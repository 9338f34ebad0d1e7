#include <algorithm>
#include <string>

#include "core/base/utf8.h"
#include "core/food/food.h"
#include "core/rules/balance.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// The food that the words behind an amount name ("of brown sugar, then"): the longest that the table knows exactly.
const food::Food* food_behind(std::string_view text, std::string_view language) {
  text = text.substr(0, text.find_first_of(".,;:()"));
  std::string words = base::lower(base::trimmed(text)) + " ";
  for (const std::string_view lead : {"of ", "the ", "more ", "cold ", "warm ", "hot "}) {
    if (words.starts_with(lead)) words.erase(0, lead.size());
  }
  words.erase(words.find_last_not_of(' ') + 1);
  if (words.size() < 3) return nullptr;
  for (int count = 3; count > 0; --count) {
    std::size_t end = 0;
    for (int i = 0; i < count && end != std::string::npos; ++i) end = words.find(' ', end == 0 ? 0 : end + 1);
    const auto found = food::look_up(words.substr(0, end), language, 1);
    if (!found.empty() && found.front().how == food::Match::How::exact) return found.front().food;
  }
  return nullptr;
}

bool is_listed(const Check& check, const food::Food& food) {
  return std::any_of(check.flow.things.begin(), check.flow.things.end(), [&](const flow::Thing& thing) {
    if (thing.id == food.id || thing.name == food.english.substr(0, food.english.find('|'))) return true;
    if (thing.ingredient < 0) return false;
    const fiche::Ingredient& one = check.fiche.ingredients[index_of(thing.ingredient)];
    // Any food of the same kind: "100 g sugar" may well be of the brown sugar listed.
    return one.food == &food || (one.food != nullptr && one.food->role == food.role && food.role != food::Role::other);
  });
}

void run(Check& check) {
  for (const fiche::Step& step : check.fiche.steps) {
    if (!is_marked(check.flow, step.component)) continue;
    for (Node c = check.document.first_child(step.node); c != fiche::none; c = check.document.next(c)) {
      if (check.document.el(c) != El::amount) continue;
      const fiche::Statement* said = check.fiche.statement(c);
      const Node behind = check.document.next(c);
      if (said == nullptr || !said->amount || !grams_stated(*said->amount)) continue;
      if (behind == fiche::none || check.document.kind(behind) != fiche::NodeKind::text) continue;
      const food::Food* food = food_behind(check.document.value(behind), check.fiche.language);
      if (food == nullptr || food->id == "water" || is_listed(check, *food)) continue;
      const std::string name(food->english.substr(0, food->english.find('|')));
      check.say(said->where, "the step takes " + said->text + " of " + name + ", which is not among the ingredients",
                "list it: <ingredient food=\"" + std::string(food->id) + "\">" + said->text + "</ingredient>, and mark it here with <use>");
    }
  }
}

}  // namespace

/// An amount mark straight in a sentence, before the name of a food of which no kin is listed.
const Rule used_and_not_listed = {
    .id = "used-and-not-listed",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "a step takes a food that is not listed",
    .explanation = R"(What is not on the list is not bought, not weighed and not in the allergens. The rule looks at amounts in a step that
no mark ties to an ingredient, where a food of the table follows, and speaks when nothing of that kind is listed. Water
for baths and for boiling is let be.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <amount>50 g</amount> of honey.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="honey" food="honey">50 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with the <use of="honey">honey</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
