#include "core/change/subject.h"

namespace tamis::change {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Fiche;
using fiche::Node;

namespace {

/// The ingredient or part that a use or an id names; none when it names a result, several things or nothing.
Node named_food(const Fiche& fiche, std::string_view id) {
  const auto [first, last] = fiche.ids.equal_range(id);
  for (auto entry = first; entry != last; ++entry) {
    const El el = fiche.document->el(entry->second);
    if (el == El::ingredient || el == El::part) return entry->second;
  }
  return fiche::none;
}

/// The element whose food attribute speaks for what stands in `node`.
Node owner_of(const Fiche& fiche, Node node) {
  const Document& document = *fiche.document;
  switch (document.el(node)) {
    case El::ingredient:
    case El::swap:
    case El::override:
    case El::part: return node;
    case El::use: return named_food(fiche, document.get(node, At::of));
    case El::amount: {
      const El above = document.el(document.parent(node));
      return above == El::ingredient || above == El::use ? owner_of(fiche, document.parent(node)) : fiche::none;
    }
    default: return fiche::none;
  }
}

/// Where the figure is an amount of the food as it goes in: not what it is filled up to, nor the food as bought.
bool is_of_food_itself(El el, At at) {
  switch (el) {
    case El::ingredient:
    case El::amount: return at == At::unknown || at == At::loose || at == At::each;
    case El::use: return at == At::take;
    case El::swap: return at == At::amount;
    case El::override: return at == At::unknown;
    default: return false;
  }
}

bool stands_within(const Document& document, Node node, El wanted) {
  for (; node != fiche::none; node = document.parent(node)) {
    if (document.el(node) == wanted) return true;
  }
  return false;
}

std::string_view first_word(std::string_view names) { return names.substr(0, names.find('|')); }

}  // namespace

Subject subject_of(const Fiche& fiche, Node node, At at) {
  const Document& document = *fiche.document;
  const El el = document.el(node);
  Subject subject;
  subject.oven = el == El::oven_temp;
  subject.control = stands_within(document, node, El::control);
  subject.gate = at == At::at || stands_within(document, node, El::gate);
  const Node owner = owner_of(fiche, node);
  if (owner == fiche::none) return subject;
  if (document.el(owner) == El::ingredient) subject.ingredient = owner;
  subject.food_id = document.get(owner, At::food);
  subject.food = subject.food_id.empty() ? nullptr : fiche.kitchen->find_food(subject.food_id);
  subject.crosses = is_of_food_itself(el, at);
  if (subject.food != nullptr) subject.tolerance.share = food::tolerance_of(subject.food->role);
  return subject;
}

std::optional<food::Density> density_of(const Fiche& fiche, const Subject& subject) {
  if (subject.food == nullptr) return std::nullopt;
  if (subject.ingredient != fiche::none) {
    const std::string_view prep = fiche.document->get(subject.ingredient, At::prep);
    for (const food::Measure& measure : subject.food->measures) {
      if (measure.note.empty() || prep.find(measure.note) == std::string_view::npos) continue;
      if (auto density = food::density_of(*subject.food, measure.note)) return density;
    }
  }
  return food::density_of(*subject.food);
}

std::string name_of(const Fiche& fiche, const Subject& subject) {
  if (subject.ingredient != fiche::none) {
    const std::string_view name = fiche.document->get(subject.ingredient, At::name);
    if (!name.empty()) return std::string(name);
  }
  if (subject.food != nullptr) return std::string(first_word(subject.food->english));
  return subject.food_id.empty() ? "this food" : std::string(subject.food_id);
}

}  // namespace tamis::change
