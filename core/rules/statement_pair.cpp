#include "core/rules/statement_pair.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;

/// also → the text; was → the text, was-X → X.
At shown_beside(At at) {
  if (at == At::also || at == At::was) return At::unknown;
  const std::string_view name = fiche::name_of(at);
  return name.starts_with("was-") ? fiche::attribute_named(name.substr(4)) : at;
}

void add_pair(const fiche::Fiche& fiche, const Statement& other, std::vector<StatementPair>& out) {
  const Statement* shown = fiche.statement(other.node, shown_beside(other.at));
  if (shown == nullptr || shown->fault || other.fault || shown == &other) return;
  StatementPair pair{shown, &other};
  if (const Node n = ingredient_of(fiche, other.node); n != fiche::none) {
    pair.food = fiche.kitchen->find_food(fiche.document->get(n, At::food));
    pair.prep = fiche.document->get(n, At::prep);
  }
  out.push_back(pair);
}

bool food_was_changed(const fiche::Fiche& fiche, Node n) {
  const Node ingredient = ingredient_of(fiche, n);
  return ingredient != fiche::none && fiche.document->find(ingredient, At::was_food) != fiche::none;
}

}  // namespace

std::vector<StatementPair> also_pairs(const fiche::Fiche& fiche) {
  std::vector<StatementPair> out;
  for (const Statement& statement : fiche.statements) {
    if (statement.at == At::also) add_pair(fiche, statement, out);
  }
  return out;
}

std::vector<StatementPair> was_pairs(const fiche::Fiche& fiche) {
  std::vector<StatementPair> out;
  for (const Statement& statement : fiche.statements) {
    if (statement.at == At::unknown || !fiche::name_of(statement.at).starts_with("was")) continue;
    const bool other_oven = fiche.document->find(statement.node, At::was_mode) != fiche::none;
    if (!other_oven && !food_was_changed(fiche, statement.node)) add_pair(fiche, statement, out);
  }
  return out;
}

Node ingredient_of(const fiche::Fiche& fiche, Node n) {
  const fiche::Document& document = *fiche.document;
  for (; n != fiche::none && n != document.top(); n = document.parent(n)) {
    const El el = document.el(n);
    if (el == El::ingredient) return n;
    if (el == El::swap || el == El::part || el == El::step) return fiche::none;
    if (el != El::use) continue;
    const auto [first, last] = fiche.ids.equal_range(document.get(n, At::of));
    const bool one = first != last && std::next(first) == last && document.el(first->second) == El::ingredient;
    return one ? first->second : fiche::none;
  }
  return fiche::none;
}

}  // namespace tamis::rules
