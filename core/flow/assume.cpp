#include <algorithm>
#include <string>

#include "core/base/utf8.h"
#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::El;
using fiche::Node;

std::size_t idx(int i) { return static_cast<std::size_t>(i); }

/// What the sentence of a step says outside its use marks, in lower case.
void add_unmarked(const fiche::Document& document, Node n, std::string& out) {
  for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::text) {
      out += document.value(c);
    } else if (document.kind(c) == fiche::NodeKind::element && document.el(c) != El::use) {
      add_unmarked(document, c, out);
    }
    out += ' ';
  }
}

bool letter(std::string_view text, std::size_t at) {
  return at < text.size() && ((text[at] >= 'a' && text[at] <= 'z') || static_cast<unsigned char>(text[at]) >= 0x80);
}

/// The word, or the start of a longer form of it: "egg" in "eggs".
bool has_word(std::string_view text, std::string_view word) {
  if (word.size() < 3) return false;
  for (std::size_t at = text.find(word); at != text.npos; at = text.find(word, at + 1)) {
    if (at == 0 || !letter(text, at - 1)) return true;
  }
  return false;
}

/// One letter shorter, so that one piece is found where many are listed: "eggs" and "egg", "cherries" and "cherry".
std::string stem_of(std::string_view word) {
  std::string stem = base::lower(base::trimmed(word));
  if (stem.ends_with("ies")) return stem.substr(0, stem.size() - 3);
  if (stem.ends_with("es") && stem.size() > 5) return stem.substr(0, stem.size() - 2);
  if ((stem.ends_with('s') || stem.ends_with('x') || stem.ends_with('n')) && stem.size() > 4) stem.pop_back();
  return stem;
}

/// The words a sentence may call it by: all of the name, its last word and, as the French and Spanish put it first,
/// its first.
void add_calls(std::string_view name, std::vector<std::string>& out) {
  name = base::trimmed(name.substr(0, name.find_first_of(",(")));
  if (name.empty()) return;
  out.push_back(stem_of(name));
  const std::size_t last = name.rfind(' ');
  if (last == name.npos) return;
  out.push_back(stem_of(name.substr(last + 1)));
  out.push_back(stem_of(name.substr(0, name.find(' '))));
}

class Assume {
 public:
  explicit Assume(Work& work) : work_(work), flow_(work.flow) {}

  void run() {
    for (std::size_t i = 0; i < flow_.things.size(); ++i) {
      Thing& thing = flow_.things[i];
      if (thing.kind == Thing::Kind::ingredient && thing.uses.empty() && !has_used_part(i)) take_in(static_cast<int>(i));
    }
    say_which_are_taken();
    take_the_rest();
  }

 private:
  [[nodiscard]] bool has_used_part(std::size_t whole) const {
    for (std::size_t i = whole + 1; i < flow_.things.size() && flow_.things[i].kind == Thing::Kind::part; ++i) {
      if (!flow_.things[i].uses.empty()) return true;
    }
    return false;
  }

  [[nodiscard]] const Total* total_of(Node component) const {
    const auto found = std::find_if(flow_.components.begin(), flow_.components.end(),
                                    [&](const Total& total) { return total.node == component; });
    return found == flow_.components.end() ? nullptr : &*found;
  }

  void take_in(int index) {
    const Node component = flow_.things[idx(index)].component;
    const Total* total = total_of(component);
    if (total == nullptr) return;
    if (const int step = step_for(index, *total); step >= 0) {
      add_use(index, step);
      if (second_choice_with_first(index)) flow_.uses.back().instead = true;
    }
  }

  [[nodiscard]] int step_for(int index, const Total& total) {
    std::vector<std::string> calls;
    for (const Step& step : flow_.steps) {
      if (step.component != total.node || (!total.marked && step.aside)) continue;
      if (!total.marked) return step.index;
      if (calls.empty()) calls = calls_of(index);
      const std::string& said = unmarked(step.index);
      if (std::any_of(calls.begin(), calls.end(), [&](const std::string& call) { return has_word(said, call); })) {
        return step.index;
      }
    }
    return -1;
  }

  [[nodiscard]] bool second_choice_with_first(int index) const {
    if (!flow_.things[idx(index)].second_choice) return false;
    const Node choice = work_.document.parent(flow_.things[idx(index)].node);
    return std::any_of(flow_.things.begin(), flow_.things.begin() + index, [&](const Thing& other) {
      return other.kind == Thing::Kind::ingredient && !other.uses.empty() && work_.document.parent(other.node) == choice;
    });
  }

  std::vector<std::string> calls_of(int index) const {
    std::vector<std::string> calls;
    const Thing& thing = flow_.things[idx(index)];
    add_calls(thing.name, calls);
    const fiche::Ingredient& ingredient = work_.fiche.ingredients[idx(thing.ingredient)];
    if (ingredient.food != nullptr) {
      add_calls(ingredient.food->english.substr(0, ingredient.food->english.find('|')), calls);
      add_calls(ingredient.food->french.substr(0, ingredient.food->french.find('|')), calls);
    }
    return calls;
  }

  const std::string& unmarked(int step) {
    if (unmarked_.empty()) unmarked_.resize(flow_.steps.size());
    std::string& said = unmarked_[idx(step)];
    if (said.empty()) {
      std::string text;
      add_unmarked(work_.document, flow_.steps[idx(step)].node, text);
      said = base::lower(text);
      said += ' ';
    }
    return said;
  }

  void add_use(int index, int step) {
    const int made = static_cast<int>(flow_.uses.size());
    Use& use = flow_.uses.emplace_back();
    use.thing = index;
    use.step = step;
    use.how = Use::How::assumed;
    flow_.things[idx(index)].uses.push_back(made);
    flow_.steps[idx(step)].takes.push_back(made);
  }

  // ---- components
  void say_which_are_taken() {
    for (const Use& use : flow_.uses) {
      const Thing& thing = flow_.things[idx(use.thing)];
      const bool made = thing.kind == Thing::Kind::component || thing.kind == Thing::Kind::result;
      if ((!made && has_steps(thing.component)) || thing.component == flow_.steps[idx(use.step)].component) continue;
      for (Total& total : flow_.components) total.taken = total.taken || total.node == thing.component;
    }
    for (const Thing& thing : flow_.things) {
      if (thing.returns < 0 || thing.uses.empty()) continue;
      const Node made_in = flow_.things[idx(thing.returns)].component;
      for (Total& total : flow_.components) {
        total.taken = total.taken || (total.node == made_in && made_in != thing.component);
      }
    }
  }

  /// Where a component is a list of ingredients alone, who takes one takes of the component.
  [[nodiscard]] bool has_steps(Node component) const {
    return std::any_of(flow_.steps.begin(), flow_.steps.end(), [&](const Step& step) { return step.component == component; });
  }

  void take_the_rest() {
    if (flow_.components.size() < 2) return;
    const Total& last = flow_.components.back();
    if (last.marked || last.taken) return;
    const bool has_ingredients = std::any_of(flow_.things.begin(), flow_.things.end(), [&](const Thing& thing) {
      return thing.kind == Thing::Kind::ingredient && thing.component == last.node;
    });
    const auto first = std::find_if(flow_.steps.begin(), flow_.steps.end(),
                                    [&](const Step& step) { return step.component == last.node && !step.aside; });
    if (has_ingredients || first == flow_.steps.end()) return;
    const int step = first->index;
    for (std::size_t i = 0; i < flow_.things.size(); ++i) {
      if (flow_.things[i].kind != Thing::Kind::component || flow_.things[i].node == last.node) continue;
      for (Total& total : flow_.components) {
        if (total.node != flow_.things[i].node || total.taken) continue;
        add_use(static_cast<int>(i), step);
        total.taken = true;
      }
    }
  }

  Work& work_;
  Flow& flow_;
  std::vector<std::string> unmarked_;
};

}  // namespace

void assume_uses(Work& work) { Assume(work).run(); }

}  // namespace tamis::flow
