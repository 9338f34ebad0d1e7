#include <algorithm>
#include <initializer_list>
#include <map>
#include <set>
#include <string>

#include "core/format/draft_keys.h"
#include "core/format/draft_link.h"

namespace tamis::format::draft {
namespace {

class Ids {
 public:
  /// The first of these that is free; when none is, the last with a number behind it.
  std::string take(std::initializer_list<std::string> wanted) {
    std::string last = "item";
    for (const std::string& one : wanted) {
      if (one.empty()) continue;
      last = one;
      if (taken_.insert(one).second) return one;
    }
    std::size_t& number = next_[last];
    number = std::max<std::size_t>(number, 1);
    while (true) {
      std::string numbered = last + "-" + std::to_string(++number);
      if (taken_.insert(numbered).second) return numbered;
    }
  }

 private:
  std::set<std::string> taken_;
  std::map<std::string, std::size_t> next_;  // so that a thousand lines of one name stay cheap
};

void give_part_ids(Ids& ids, DraftIngredient& ingredient, const std::string& name) {
  for (DraftPart& part : ingredient.parts) {
    const std::string word = part.zest ? "zest" : "juice";
    part.id = ids.take({word, name + "-" + word});
  }
}

}  // namespace

void give_ids(const Desk& desk, Recipe& recipe) {
  Ids ids;
  (void)ids.take({slug(recipe.title, 6), "fiche"});
  for (DraftComponent& component : recipe.components) {
    const std::string whole = slug(component.title);
    const std::string head = slug(head_of(desk.lexicon, component.title));
    component.id = component.whole_method ? ids.take({"method"}) : ids.take({head, whole, "recipe"});
  }
  for (DraftComponent& component : recipe.components) {
    for (DraftIngredient& ingredient : component.ingredients) {
      const std::string whole = slug(ingredient.bare);
      const std::string noun = slug(head_of(desk.lexicon, ingredient.bare));
      const std::string head = noun.empty() ? whole : noun;
      ingredient.id = ids.take({head, whole, head.empty() ? std::string() : component.id + "-" + head, whole.empty() ? "item" : whole});
      give_part_ids(ids, ingredient, head);
    }
  }
}

}  // namespace tamis::format::draft
