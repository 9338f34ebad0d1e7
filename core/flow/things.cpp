#include <algorithm>

#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

std::string_view first_of(std::string_view names) { return names.substr(0, names.find('|')); }

std::string_view name_of_food(const food::Food* food, std::string_view language) {
  if (food == nullptr) return {};
  const std::string_view french = first_of(food->french);
  return language.starts_with("fr") && !french.empty() ? french : first_of(food->english);
}

std::string_view first_filled(std::string_view a, std::string_view b, std::string_view c) {
  return !a.empty() ? a : !b.empty() ? b : c;
}

bool of_the_food(std::string_view purpose) { return purpose.empty() || purpose == "food"; }

class List {
 public:
  explicit List(Work& work) : work_(work), document_(work.document) {}

  void make() {
    const auto& fiche = work_.fiche;
    work_.flow.things.reserve(fiche.ingredients.size() + 3 * fiche.steps.size() + fiche.components.size());
    auto next = fiche.ingredients.begin();
    const auto ingredients_of = [&](Node component) {
      variant_ = fiche::none;
      variants_ = -1;
      for (; next != fiche.ingredients.end() && next->component == component; ++next) {
        add_ingredient(static_cast<int>(next - fiche.ingredients.begin()));
      }
    };
    ingredients_of(fiche::none);
    for (const Node component : fiche.components) {
      add_component(component);
      ingredients_of(component);
      ingredients_of(fiche::none);
    }
    for (; next != fiche.ingredients.end(); ++next) add_ingredient(static_cast<int>(next - fiche.ingredients.begin()));
    add_results();
    index();
  }

 private:
  Thing& add(Thing::Kind kind, Node node, Node component) {
    Thing& made = work_.flow.things.emplace_back();
    made.kind = kind;
    made.node = node;
    made.component = component;
    return made;
  }

  void add_component(Node node) {
    Thing& made = add(Thing::Kind::component, node, node);
    made.id = document_.get(node, At::id);
    made.name = first_filled(document_.get(node, At::title), made.id, {});
    made.optional = document_.get(node, At::optional) == "yes";
    work_.flow.components.push_back({node, std::nullopt, false, false});
  }

  void add_ingredient(int index) {
    const fiche::Ingredient& ingredient = work_.fiche.ingredients[static_cast<std::size_t>(index)];
    const int whole = static_cast<int>(work_.flow.things.size());
    Thing& made = add(Thing::Kind::ingredient, ingredient.node, ingredient.component);
    made.id = ingredient.id;
    made.name = first_filled(ingredient.name, name_of_food(ingredient.food, work_.fiche.language), ingredient.id);
    made.ingredient = index;
    made.counts = of_the_food(document_.get(ingredient.node, At::purpose));
    made.optional = document_.get(ingredient.node, At::optional) == "yes";
    place(made);
    for (Node c = document_.first_child(ingredient.node); c != fiche::none; c = document_.next(c)) {
      if (document_.el(c) == El::part) add_part(c, whole);
    }
  }

  void add_part(Node node, int whole) {
    const Thing of = work_.flow.things[static_cast<std::size_t>(whole)];
    Thing& made = add(Thing::Kind::part, node, of.component);
    made.id = document_.get(node, At::id);
    const std::string_view food = document_.get(node, At::food);
    made.name = first_filled(name_of_food(food.empty() ? nullptr : work_.fiche.kitchen->find_food(food), work_.fiche.language),
                             made.id, {});
    made.ingredient = of.ingredient;
    made.was = whole;
    made.variant = of.variant;
    made.counts = of.counts;
    made.optional = of.optional;
    made.second_choice = of.second_choice;
  }

  /// Where an ingredient stands: in a choice, in a variant.
  void place(Thing& made) {
    Node around = document_.parent(made.node);
    if (document_.el(around) == El::choice) {
      for (Node c = document_.previous(made.node); c != fiche::none; c = document_.previous(c)) {
        if (document_.el(c) == El::ingredient) made.second_choice = true;
      }
      around = document_.parent(around);
    }
    if (document_.el(around) != El::variant) return;
    if (around != variant_) {
      ++variants_;
      variant_ = around;
    }
    made.variant = variants_;
  }

  void add_results() {
    const auto& steps = work_.fiche.steps;
    work_.results_of.reserve(steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
      work_.results_of.push_back(static_cast<int>(work_.flow.things.size()));
      for (const std::string_view id : steps[i].makes) {
        Thing& made = add(Thing::Kind::result, steps[i].node, steps[i].component);
        made.id = made.name = id;
        made.maker = static_cast<int>(i);
      }
    }
  }

  void index() {
    auto& things = work_.flow.things;
    auto& by_id = work_.flow.by_id;
    by_id.reserve(things.size());
    work_.flow.by_node.reserve(things.size());
    for (std::size_t i = 0; i < things.size(); ++i) {
      const int index = static_cast<int>(i);
      if (!things[i].id.empty()) by_id.emplace_back(things[i].id, index);
      if (things[i].kind != Thing::Kind::result) work_.flow.by_node.emplace_back(things[i].node, index);
    }
    std::sort(work_.flow.by_node.begin(), work_.flow.by_node.end());
    std::sort(by_id.begin(), by_id.end());
    const auto same = [](const auto& a, const auto& b) { return a.first == b.first; };
    by_id.erase(std::unique(by_id.begin(), by_id.end(), same), by_id.end());
    work_.names.reserve(by_id.size());
    for (const auto& [id, first] : by_id) work_.names.push_back({id, first, -1});
  }

  Work& work_;
  const fiche::Document& document_;
  Node variant_ = fiche::none;  // the one met last, and how many of its component were met
  int variants_ = -1;
};

}  // namespace

void list_things(Work& work) { List(work).make(); }

int Work::name_of(std::string_view id) const {
  const auto before = [](const Name& name, std::string_view wanted) { return name.id < wanted; };
  const auto found = std::lower_bound(names.begin(), names.end(), id, before);
  return found == names.end() || found->id != id ? -1 : static_cast<int>(found - names.begin());
}

}  // namespace tamis::flow
