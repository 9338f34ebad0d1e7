#include "core/format/draft_scope.h"

#include <algorithm>
#include <span>
#include <string_view>
#include <utility>

#include "core/format/draft_keys.h"

namespace tamis::format::draft {
namespace {

constexpr std::size_t most_alike = 8;

constexpr std::string_view zest_words[] = {"zest", "rind", "zeste", "abrieb", "schale", "ralladura"};
constexpr std::string_view juice_words[] = {"juice", "jus", "saft", "zumo", "jugo"};

/// "zest", "lemon zest".
std::vector<Key> part_keys(const Desk& desk, const DraftIngredient& ingredient, const DraftPart& part) {
  const std::span<const std::string_view> words = part.zest ? std::span<const std::string_view>(zest_words) : juice_words;
  std::vector<Key> keys;
  for (const std::string_view word : words) {
    const std::string stemmed = stem(word, desk.lexicon.language());
    keys.push_back({{stemmed}, 1});
    if (ingredient.keys.empty() || ingredient.keys[0].words.size() != 1) continue;
    const std::string& fruit = ingredient.keys[0].words[0];
    keys.push_back({{fruit, stemmed}, 0});
    if (desk.lexicon.language() != "de") continue;
    for (const std::string_view between : {"", "n", "en"}) {  // "Zitronensaft"
      keys.push_back({{stem(fruit + std::string(between) + std::string(word), "de")}, 0});
    }
  }
  return keys;
}

void add_parts(const Desk& desk, Scope& scope, std::size_t component, DraftIngredient& ingredient) {
  for (const DraftPart& part : ingredient.parts) {
    scope.add({component, part.id, part.zest ? "zest" : "juice", &ingredient}, part_keys(desk, ingredient, part));
  }
}

}  // namespace

void Scope::add(Target target, const std::vector<Key>& keys) {
  for (const Key& key : keys) {
    if (key.words.empty()) continue;
    std::string phrase;
    for (const std::string& word : key.words) phrase += word + " ";
    if (++count[phrase] <= most_alike) entries[key.words.front()].push_back({key, targets.size()});
  }
  targets.push_back(std::move(target));
}

void add_ingredients(const Desk& desk, Scope& scope, std::size_t number, DraftComponent& component) {
  for (DraftIngredient& ingredient : component.ingredients) {
    scope.add({number, ingredient.id, ingredient.name, &ingredient}, ingredient.keys);
    add_parts(desk, scope, number, ingredient);
  }
}

void add_component(const Desk& desk, Scope& scope, std::size_t number, DraftComponent& component) {
  if (!component.own_title) return;
  std::vector<Key> keys = keys_of(desk.lexicon, component.title);
  keys.erase(std::remove_if(keys.begin(), keys.end(), [](const Key& key) { return key.rank == 2; }), keys.end());
  for (Key& key : keys) key.rank += 10;
  scope.add({number, component.id, component.title, nullptr, &component}, keys);
}

void add_result(const Desk& desk, Scope& scope, std::size_t number, const DraftStep& step) {
  if (step.makes.empty()) return;
  Key key;
  for (const Word& word : words_of(desk.slice(step.result))) key.words.push_back(stem(word.text, desk.lexicon.language()));
  key.rank = 10;
  scope.add({number, step.makes, desk.folded(step.result)}, {key});
}

}  // namespace tamis::format::draft
