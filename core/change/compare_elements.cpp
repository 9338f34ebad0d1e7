#include "core/change/compare_work.h"
#include "core/change/compare_words.h"
#include "core/fiche/prose.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::NodeKind;

namespace {

/// "sugar" is so much of it by weight, where the whole component is known and was scaled.
std::string share_comment(const Comparing& work, Node a, Node b, double factor) {
  if (factor == 1) return {};
  const double was = share_of_component(work.from, a);
  const double is = share_of_component(work.to, b);
  if (was <= 0 || is <= 0) return {};
  return percent_of_whole(is) + " of it by weight, was " + percent_of_whole(was);
}

/// "7 pieces, were 6", where the ingredient is counted too.
std::string pieces_comment(const Comparing& work, Node a, Node b) {
  const std::string_view was = work.from.document().get(a, At::pieces);
  const std::string_view is = work.to.document().get(b, At::pieces);
  if (was.empty() || is.empty() || was == is) return {};
  return std::string(is) + " pieces, were " + std::string(was);
}

void compare_own_figure(Comparing& work, Node a, Node b) {
  const fiche::Statement* was = work.from.fiche().statement(a);
  const fiche::Statement* is = work.to.fiche().statement(b);
  if (was == nullptr || is == nullptr) return compare_sentence(work, a, b);
  Manner manner = manner_of(work, b, At::unknown);
  if (work.to.document().el(b) == El::ingredient) {
    const std::string pieces = pieces_comment(work, a, b);
    const std::string share = share_comment(work, a, b, manner.factor);
    manner.comment = pieces + (pieces.empty() || share.empty() ? "" : "; ") + share;
  }
  tell_figures(work, *was, *is, manner);
}

bool is_figure(El el) { return el == El::ingredient || el == El::amount || el == El::override; }

/// What a house adds of its own is compared as it stands.
void compare_foreign(Comparing& work, Node a, Node b) {
  const auto values = [](const fiche::Document& document, Node node) {
    std::string all;
    for (Node c = document.first_child(node); c != fiche::none; c = document.next(c))
      if (document.kind(c) == NodeKind::foreign) all += document.value(c);
    return all;
  };
  const std::string was = values(work.from.document(), a);
  const std::string is = values(work.to.document(), b);
  if (was == is) return;
  Change change;
  change.kind = was.empty() ? Change::Kind::added : is.empty() ? Change::Kind::removed : Change::Kind::changed;
  change.topic = Topic::other;
  change.what = work.to.name(b);
  change.is = is;
  change.was = was;
  change.text = change.what + ": what the house adds of its own " +
                (was.empty() ? "is new" : is.empty() ? "is gone" : "differs");
  work.say(std::move(change), a, b);
}

void compare_blocks(Comparing& work, Node a, Node b) {
  for (const Node child : work.to.blocks(b)) {
    const Node before = work.pairs.in_old(child);
    if (before == fiche::none) {
      tell_added(work, child);
    } else {
      compare_pair(work, before, child);
    }
  }
  for (const Node child : work.from.blocks(a)) {
    if (work.pairs.in_new(child) == fiche::none) tell_removed(work, child);
  }
}

}  // namespace

void compare_pair(Comparing& work, Node a, Node b) {
  const El el = work.to.document().el(b);
  compare_attributes(work, a, b);
  if (is_figure(el)) {
    compare_own_figure(work, a, b);
  } else if (el != El::allergens) {
    compare_sentence(work, a, b);
  }
  compare_foreign(work, a, b);
  compare_blocks(work, a, b);
}

}  // namespace tamis::change
