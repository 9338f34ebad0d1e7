#include "core/change/scale_figures.h"

#include <algorithm>

#include "core/change/kept.h"
#include "core/change/scale_sentence.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using measure::Amount;
using measure::Kind;

bool Figures::grows(const Statement& statement) const {
  switch (document_.el(statement.node)) {
    case El::amount: return statement.at == At::unknown || statement.at == At::also;
    case El::use: return statement.at == At::take;
    case El::component: return statement.at == At::take;
    case El::loss: return statement.at == At::amount;
    case El::part: return statement.at == At::share;
    case El::step: return statement.at == At::reduce_by || statement.at == At::reduce_to;
    default: return false;
  }
}

void Figures::other(const Statement& statement) {
  if (!grows(statement)) return;
  const Node node = statement.node;
  const El el = document_.el(node);
  if (el == El::amount && (!stands_in_sentence(document_, node) || document_.find(node, At::batch) != fiche::none)) return;
  if (el == El::loss && in_other_yield(node)) return;
  const Amount* amount = statement.amount ? &*statement.amount
                         : statement.share && statement.share->form == measure::Share::Form::amount
                             ? &statement.share->amount
                             : nullptr;
  if (amount == nullptr || !amount->has_figure() || is_for_each(fiche_, node, *amount)) return;
  if (work_.factor == 1) return;
  const Subject subject = subject_of(fiche_, node, statement.at);
  const std::string text = amount->kind == Kind::count
                               ? work_.text(rounded_count(*amount, work_.factor, subject.food))
                           : amount->kind == Kind::length ? statement.text
                                                          : measured(statement, *amount, work_.factor, subject);
  if (el == El::use) replace_in_words(node, statement.text, text);
  const Node to = el == El::loss ? written_loss(node) : node;
  if (to != fiche::none) write(to, statement.at, text);
}

bool Figures::in_other_yield(Node loss) const {
  const Node above = document_.parent(loss);
  return document_.el(above) == El::yield && !work_.yields.empty() && above != work_.yields.front() &&
         document_.parent(above) == document_.root();
}

Node Figures::written_loss(Node loss) const {
  const Node above = document_.parent(loss);
  if (work_.yields.empty() || above != work_.yields.front()) return loss;
  if (work_.verbatim) return fiche::none;
  const auto from = children_of(document_, above, El::loss), to = children_of(document_, work_.written, El::loss);
  const auto at = static_cast<std::size_t>(std::find(from.begin(), from.end(), loss) - from.begin());
  return at < to.size() ? to[at] : loss;
}

void Figures::replace_in_words(Node use, std::string_view old, std::string_view now) {
  for (Node c = document_.first_child(use); c != fiche::none; c = document_.next(c)) {
    if (document_.kind(c) != fiche::NodeKind::text) continue;
    std::string words(document_.value(c));
    const std::size_t at = words.find(old);
    if (at == std::string::npos) continue;
    document_.set_value(c, words.replace(at, old.size(), now));
    return;
  }
}

}  // namespace tamis::change
