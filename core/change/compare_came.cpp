#include <algorithm>

#include "core/change/compare_marks.h"
#include "core/change/compare_work.h"
#include "core/change/compare_words.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

constexpr std::size_t words_quoted = 12;

std::string counted(std::size_t count, const std::string& what) {
  return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

/// "40 g hazelnut paste in the mousse".
std::string ingredient_text(const Side& side, Node node) {
  const std::string amount = side.sentence(node);
  return (amount.empty() ? "" : amount + " ") + side.name(node) + side.in_component(node);
}

/// "passed-with-changes" as words.
std::string spoken(std::string text) {
  std::replace(text.begin(), text.end(), '-', ' ');
  return text;
}

std::string component_text(const Side& side, Node node) {
  std::size_t ingredients = 0;
  std::size_t steps = 0;
  for (const Node child : side.blocks(node)) {
    ingredients += side.document().el(child) == El::ingredient ? 1U : 0U;
    steps += side.document().el(child) == El::step ? 1U : 0U;
  }
  return side.name(node) + " (" + counted(ingredients, "ingredient") + ", " + counted(steps, "step") + ")";
}

/// What an element of another kind says: its words, else its attributes.
std::string block_text(const Side& side, Node node) {
  const std::string words = side.sentence(node);
  if (!words.empty()) return quoted_start(words, words_quoted);
  std::string out;
  const fiche::Document& document = side.document();
  for (fiche::Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a)) {
    if (document.at(a) == At::id || document.attribute_name(a).starts_with("xmlns")) continue;
    out += (out.empty() ? "" : ", ") + std::string(document.attribute_value(a));
  }
  return out;
}

/// The step beside it in its component, by name; "" at the end.
std::string neighbour(const Side& side, Node step, bool before) {
  const fiche::Document& document = side.document();
  Node n = step;
  do {
    n = before ? document.previous(n) : document.next(n);
  } while (n != fiche::none && document.el(n) != El::step);
  return n == fiche::none ? "" : side.name(n);
}

/// " between fold and chill".
std::string between(const Side& side, Node step) {
  const std::string before = neighbour(side, step, true);
  const std::string after = neighbour(side, step, false);
  if (!before.empty() && !after.empty()) return " between " + before + " and " + after;
  if (!before.empty()) return " after " + before;
  return after.empty() ? side.in_component(step) : " before " + after;
}

std::string step_text(const Side& side, Node step) {
  return side.name(step) + between(side, step) + ": " + quoted_start(side.sentence(step), words_quoted);
}

struct Told {
  Topic topic;
  std::string came, went;  // the whole line for either
  std::string text;        // of the element alone
  bool condition = false;  // tightens when it comes, loosens when it goes
};

Told told_of(const Side& side, Node node) {
  const std::string at_step = [&] {
    const Node step = side.around(node, El::step);
    return step == fiche::none || step == node ? "" : " at " + side.name(step);
  }();
  const auto as = [&](Topic topic, const std::string& text, bool condition = false) {
    const std::string name = side.name(node) + at_step + (at_step.empty() ? side.in_component(node) : "");
    const std::string colon = text.empty() ? "" : ": " + text;
    return Told{topic, "new " + name + colon, "no longer: " + name + colon, text, condition};
  };
  switch (side.document().el(node)) {
    case El::ingredient: {
      const std::string text = ingredient_text(side, node);
      return {Topic::figures, "new ingredient: " + text, "no longer: " + text, text};
    }
    case El::step: {
      const std::string text = step_text(side, node);
      return {Topic::order, "new step, " + text, "step gone, " + text, text};
    }
    case El::component: {
      const std::string text = component_text(side, node);
      return {Topic::figures, "new component: " + text, "no longer: component " + text, text};
    }
    case El::variant: {
      const std::string text = side.name(node);
      return {Topic::figures, "new variant: " + text, "no longer: variant " + text, text};
    }
    case El::trial: {
      const std::string verdict(side.document().get(node, At::verdict));
      const std::string text =
          std::string(side.document().get(node, At::date)) + (verdict.empty() ? "" : ", " + spoken(verdict));
      return {Topic::other, "trial added: " + text, "trial taken out: " + text, text};
    }
    case El::swap: {
      const std::string text = side.name(node);
      return {Topic::figures, "new swap: " + text, "no longer a swap: " + text, text};
    }
    case El::control: return as(Topic::safety, block_text(side, node), true);
    case El::gate: return as(Topic::figures, block_text(side, node), true);
    case El::caution: return as(Topic::safety, block_text(side, node));
    case El::keep: {
      std::string attributes;
      for (const At at : {At::where, At::at, At::for_}) {
        const std::string_view value = side.document().get(node, at);
        if (!value.empty()) attributes += (attributes.empty() ? "" : ", ") + std::string(value);
      }
      return as(Topic::safety, attributes.empty() ? block_text(side, node) : attributes);
    }
    case El::yield:
    case El::mould:
    case El::loss:
    case El::override:
    case El::amount:
    case El::part:
    case El::choice: return as(Topic::figures, block_text(side, node));
    default: return as(in_safety(side, node) ? Topic::safety : Topic::other, block_text(side, node));
  }
}

void tell(Comparing& work, Node in_old, Node in_new) {
  const bool came = in_new != fiche::none;
  const Node node = came ? in_new : in_old;
  const Side& side = came ? work.to : work.from;
  const Told told = told_of(side, node);
  Change change;
  change.kind = came ? Change::Kind::added : Change::Kind::removed;
  change.topic = told.topic;
  if (told.condition) change.hold = came ? Change::Hold::tightened : Change::Hold::loosened;
  change.what = side.name(node);
  change.text = came ? told.came : told.went;
  (came ? change.is : change.was) = told.text;
  work.say(std::move(change), in_old, in_new);
}

}  // namespace

void tell_added(Comparing& work, Node in_new) {
  if (work.to.document().el(in_new) == El::allergens) return;  // compare_allergens()
  tell(work, fiche::none, in_new);
  for (const Node child : work.to.blocks(in_new)) {
    const Node before = work.pairs.in_old(child);
    if (before != fiche::none) compare_pair(work, before, child);  // moved here
  }
}

void tell_removed(Comparing& work, Node in_old) {
  if (work.from.document().el(in_old) == El::allergens) return;
  tell(work, in_old, fiche::none);
}

}  // namespace tamis::change
