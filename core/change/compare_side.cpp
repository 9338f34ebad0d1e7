#include "core/change/compare_side.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/change/author.h"
#include "core/change/compare_words.h"
#include "core/change/subject.h"
#include "core/fiche/prose.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::NodeKind;

namespace {

void add_below(const fiche::Document& document, Node node, El el, std::vector<Node>& out) {
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != NodeKind::element) continue;
    if (document.el(c) == el) out.push_back(c);
    add_below(document, c, el, out);
  }
}

/// "reserved-syrup" as words.
std::string spoken(std::string_view id) {
  std::string out(id);
  std::replace_if(out.begin(), out.end(), [](char c) { return c == '-' || c == '_'; }, ' ');
  return out;
}

std::string actions_in_words(std::string_view actions) {
  const std::vector<std::string> words = words_of(actions);
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
    out += words[i];
  }
  return out;
}

bool is_mark_of(const fiche::Document& document, Node node) {
  return document.kind(node) == NodeKind::text ||
         (document.kind(node) == NodeKind::element && fiche::is_mark(document, node));
}

}  // namespace

std::string inside_sentence(std::string_view title) {
  std::size_t first = 0;
  base::next_scalar(title, first);
  std::size_t second = first;
  base::next_scalar(title, second);
  const std::string_view next = title.substr(first, second - first);
  const bool capitals = base::lower(next) != next;
  return capitals ? std::string(title) : base::lower(title.substr(0, first)) + std::string(title.substr(first));
}

Side::Side(const Compared& given)
    : document_(restore_author(given.document, given.kitchen).document),
      fiche_(fiche::read_fiche(document_, given.kitchen)) {}

std::vector<Node> Side::all(El el) const {
  std::vector<Node> out;
  add_below(document_, document_.root(), el, out);
  return out;
}

std::vector<Node> Side::blocks(Node parent) const {
  std::vector<Node> out;
  for (Node c = document_.first_child(parent); c != fiche::none; c = document_.next(c)) {
    if (document_.kind(c) == NodeKind::element && !fiche::is_mark(document_, c)) out.push_back(c);
  }
  return out;
}

Node Side::around(Node node, El el) const {
  while (node != fiche::none && node != document_.top()) {
    if (document_.kind(node) == NodeKind::element && document_.el(node) == el) return node;
    node = document_.parent(node);
  }
  return fiche::none;
}

std::string Side::sentence(Node node) const {
  std::string out;
  for (Node c = document_.first_child(node); c != fiche::none; c = document_.next(c)) {
    if (!is_mark_of(document_, c)) continue;
    out += document_.kind(c) == NodeKind::text ? std::string(document_.value(c)) : document_.all_text(c);
  }
  const std::vector<std::string> words = words_of(out);
  return joined(words, 0, words.size());
}

std::string Side::name(Node node) const {
  switch (document_.el(node)) {
    case El::ingredient:
    case El::swap:
    case El::part: {
      const std::string_view own = document_.get(node, At::name);
      if (!own.empty()) return std::string(own);
      const std::string_view id = document_.get(node, At::food);
      return id.empty() ? sentence(node) : name_of(fiche_, subject_of(fiche_, node, At::unknown));
    }
    case El::step: return step_name(node);
    case El::component:
    case El::variant: return inside_sentence(document_.get(node, At::title));
    default: return block_name(node);
  }
}

std::string Side::block_name(Node node) const {
  const El el = document_.el(node);
  const auto with = [&](std::string_view before, At at) {
    const std::string_view value = document_.get(node, at);
    return value.empty() ? std::string(before) : std::string(before) + " " + std::string(value);
  };
  switch (el) {
    case El::mould: {
      const std::string_view own = document_.get(node, At::name);
      if (!own.empty()) return std::string(own);
      const std::string_view shape = document_.get(node, At::shape);
      return shape.empty() || shape == "other" ? "mould" : std::string(shape);
    }
    case El::equipment: {
      const std::string text = sentence(node);
      return text.empty() ? with("equipment", At::kind) : text;
    }
    case El::trial: return with("trial of", At::date);
    case El::measured: return with("measured", At::what);
    case El::loss: return with("loss in", At::what);
    case El::override: return "amount of " + spoken(document_.get(node, At::ingredient));
    case El::change: return with("note on revision", At::revision);
    case El::keep: return "keeping";
    case El::allergens: return "allergen statement";
    case El::gate: return "gate";
    case El::control: return "control point";
    case El::done: return "picture of done";
    case El::why: return "reason";
    case El::short_: return "short wording";
    case El::learner: return "learner's wording";
    case El::unknown: return std::string(document_.name(node));
    default: return std::string(fiche::name_of(el));
  }
}

std::string Side::step_name(Node step) const {
  const std::string actions = actions_in_words(document_.get(step, At::do_));
  if (actions.empty()) return quoted_start(sentence(step), 3);
  if (!shares_action(step)) return actions;
  const std::vector<std::string> makes = words_of(document_.get(step, At::makes));
  if (makes.size() == 1) return actions + " (" + spoken(makes.front()) + ")";
  const Node component = around(step, El::component);
  const bool tells = component != fiche::none && fiche_.components.size() > 1;
  return tells ? actions + " (" + inside_sentence(document_.get(component, At::title)) + ")" : actions;
}

bool Side::shares_action(Node step) const {
  const std::string_view own = document_.get(step, At::do_);
  return std::any_of(fiche_.steps.begin(), fiche_.steps.end(), [&](const fiche::Step& other) {
    return other.node != step && document_.get(other.node, At::do_) == own;
  });
}

std::string Side::product(Node step) const {
  const std::vector<std::string> makes = words_of(document_.get(step, At::makes));
  return makes.size() == 1 ? spoken(makes.front()) : step_name(step);
}

std::string Side::name_of_id(std::string_view id) const {
  const auto [first, last] = fiche_.ids.equal_range(id);
  for (auto entry = first; entry != last; ++entry) {
    const El el = document_.el(entry->second);
    if (el != El::step) return name(entry->second);
    if (document_.get(entry->second, At::id) == id) return step_name(entry->second);
  }
  return spoken(id);
}

std::string Side::in_component(Node node) const {
  const Node component = around(node, El::component);
  if (component == fiche::none || fiche_.components.size() < 2) return {};
  return " in the " + inside_sentence(document_.get(component, At::title));
}

}  // namespace tamis::change
