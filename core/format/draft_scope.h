#ifndef CORE_FORMAT_DRAFT_SCOPE_H
#define CORE_FORMAT_DRAFT_SCOPE_H

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// Something a step may name.
struct Target {
  std::size_t component = 0;
  std::string id;
  std::string shown;                       ///< for a question
  DraftIngredient* ingredient = nullptr;   ///< null: a component
  DraftComponent* whole = nullptr;         ///< the component
};

struct Entry {
  Key key;
  std::size_t target = 0;
};

/// What the steps of one component may name, by the first word of each phrase.
struct Scope {
  std::vector<Target> targets;
  std::map<std::string, std::vector<Entry>, std::less<>> entries;
  std::map<std::string, std::size_t> count;

  /// Of a phrase that very many answer to only the first few are kept: it is ambiguous all the same.
  void add(Target target, const std::vector<Key>& keys);
};

void add_ingredients(const Desk& desk, Scope& scope, std::size_t number, DraftComponent& component);
/// Component titles come behind every ingredient: their phrases rank lower.
void add_component(const Desk& desk, Scope& scope, std::size_t number, DraftComponent& component);
/// What a step makes, under the name that the author gives it; nothing when there is none.
void add_result(const Desk& desk, Scope& scope, std::size_t number, const DraftStep& step);

}  // namespace tamis::format::draft

#endif
