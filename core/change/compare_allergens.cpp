#include <map>
#include <set>
#include <utility>

#include "core/change/compare_work.h"
#include "core/change/compare_words.h"
#include "core/food/food.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

/// The author's own statements, all of them in one.
struct Stated {
  std::set<std::string> contains, may_contain;
  Node node = fiche::none;
};

Stated stated_in(const Side& side) {
  Stated out;
  for (const Node node : side.all(El::allergens)) {
    if (out.node == fiche::none) out.node = node;
    for (std::string& word : words_of(side.document().get(node, At::contains))) out.contains.insert(std::move(word));
    for (std::string& word : words_of(side.document().get(node, At::may_contain))) out.may_contain.insert(std::move(word));
  }
  return out;
}

/// 2: contains, 1: may contain, 0: not stated.
int level_of(const Stated& stated, const std::string& word) {
  return stated.contains.contains(word) ? 2 : stated.may_contain.contains(word) ? 1 : 0;
}

std::string levels_text(int was, int is, const std::string& words) {
  static constexpr std::string_view said[] = {"not stated", "may contain", "contains"};
  if (was == 0) return (is == 2 ? "allergen added: " : "may contain, added: ") + words;
  if (is == 0) return (was == 2 ? "allergen no longer stated: " : "may contain, no longer stated: ") + words;
  return "allergen " + words + ": " + std::string(said[is]) + ", was " + std::string(said[was]);
}

void say_levels(Comparing& work, const Stated& was, const Stated& is, std::pair<int, int> levels,
                const std::vector<std::string>& words) {
  const auto [before, now] = levels;
  Change change;
  change.kind = before == 0 ? Change::Kind::added : now == 0 ? Change::Kind::removed : Change::Kind::changed;
  change.topic = Topic::safety;
  // Who reads the new fiche is warned of less.
  change.hold = now < before ? Change::Hold::loosened : Change::Hold::tightened;
  for (const std::string& word : words) change.what += (change.what.empty() ? "" : ", ") + word;
  if (now > 0) change.is = change.what;
  if (before > 0) change.was = change.what;
  change.text = levels_text(before, now, change.what);
  work.say(std::move(change), was.node, is.node);
}

/// What the ingredients bring in, each allergen with the first food that does. Only what is of the food.
std::map<std::string, Node> brought_in(const Side& side) {
  std::map<std::string, Node> out;
  for (const fiche::Ingredient& ingredient : side.fiche().ingredients) {
    const std::string_view purpose = side.document().get(ingredient.node, At::purpose);
    if (ingredient.food == nullptr || purpose == "bath" || purpose == "cover") continue;
    food::Allergens bits = ingredient.food->allergens;
    const auto* own = side.kitchen().own_food(ingredient.food_id);
    if (own != nullptr && !own->specified.empty()) bits = own->contains;
    for (const food::AllergenName& name : food::allergen_names())
      if ((bits & name.bit) != 0) out.emplace(name.id, ingredient.node);
  }
  return out;
}

/// Allergens that a food brings in on one side only, all of one food in one line.
void say_brought(Comparing& work, const std::map<std::string, Node>& here, const std::map<std::string, Node>& there,
                 bool came, const std::set<std::string>& stated) {
  std::map<Node, std::vector<std::string>> foods;
  for (const auto& [word, node] : here)
    if (!there.contains(word)) foods[node].push_back(word);
  for (const auto& [node, words] : foods) {
    Change change;
    change.kind = came ? Change::Kind::added : Change::Kind::removed;
    change.topic = Topic::safety;
    bool all_stated = true;
    for (const std::string& word : words) {
      change.what += (change.what.empty() ? "" : ", ") + word;
      all_stated = all_stated && stated.contains(word);
    }
    (came ? change.is : change.was) = (came ? work.to : work.from).name(node);
    change.text = (came ? "brought in by " : "no longer brought in by ") + (came ? change.is : change.was) + ": " + change.what;
    if (came && !all_stated) change.text += ", which the fiche does not state";
    work.say(std::move(change), came ? fiche::none : node, came ? node : fiche::none);
  }
}

}  // namespace

void compare_allergens(Comparing& work) {
  const Stated was = stated_in(work.from);
  const Stated is = stated_in(work.to);
  std::set<std::string> words;
  for (const std::set<std::string>* all : {&was.contains, &was.may_contain, &is.contains, &is.may_contain})
    words.insert(all->begin(), all->end());
  std::map<std::pair<int, int>, std::vector<std::string>> changed;
  for (const std::string& word : words) {
    const std::pair levels(level_of(was, word), level_of(is, word));
    if (levels.first != levels.second) changed[levels].push_back(word);
  }
  for (const auto& [levels, those] : changed) say_levels(work, was, is, levels, those);
  if (was.node != fiche::none && is.node != fiche::none) compare_sentence(work, was.node, is.node);
  const auto before = brought_in(work.from);
  const auto now = brought_in(work.to);
  say_brought(work, now, before, true, is.contains);
  say_brought(work, before, now, false, was.contains);
}

}  // namespace tamis::change
