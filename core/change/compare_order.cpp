#include <algorithm>

#include "core/change/compare_marks.h"
#include "core/change/compare_work.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

/// Children of a pair that stand in both, in the new order.
struct Row {
  std::vector<Node> in_new, in_old;
  std::vector<bool> moved;
};

Row row_of(const Comparing& work, Node a, Node b, El el) {
  Row row;
  std::vector<Node> old_order;
  for (const Node child : work.from.blocks(a))
    if (work.from.document().el(child) == el) old_order.push_back(child);
  std::vector<Standing> standing;
  for (const Node child : work.to.blocks(b)) {
    const Node before = work.pairs.in_old(child);
    const auto place = std::find(old_order.begin(), old_order.end(), before);
    if (work.to.document().el(child) != el || place == old_order.end()) continue;
    row.in_new.push_back(child);
    row.in_old.push_back(before);
    const std::string was = words_in_line(work.from, before);
    const std::string is = words_in_line(work.to, child);
    standing.push_back({static_cast<std::size_t>(place - old_order.begin()), was.size() + is.size(),
                        std::min(was, is) + std::max(was, is)});
  }
  row.moved = moved_among(standing);
  return row;
}

/// The nearest that stayed and that the element now stands before; else the nearest that it stands behind.
std::string now_where(const Comparing& work, const Row& row, std::size_t moved) {
  const auto was_before = [&](std::size_t i) { return row.in_old[i] < row.in_old[moved]; };
  for (std::size_t i = moved + 1; i < row.in_new.size(); ++i)
    if (!row.moved[i] && was_before(i)) return " now before the " + work.to.name(row.in_new[i]);
  for (std::size_t i = moved; i-- > 0;)
    if (!row.moved[i] && !was_before(i)) return " now after the " + work.to.name(row.in_new[i]);
  return " now elsewhere";
}

void tell_moved(Comparing& work, Node a, Node b, El el) {
  const Row row = row_of(work, a, b, el);
  for (std::size_t i = 0; i < row.in_new.size(); ++i) {
    if (!row.moved[i]) continue;
    Change change;
    change.kind = Change::Kind::moved;
    change.topic = Topic::order;
    change.what = work.to.name(row.in_new[i]);
    change.text = change.what + now_where(work, row, i);
    work.say(std::move(change), row.in_old[i], row.in_new[i]);
  }
}

/// A list of ingredients in another order says nothing else.
void tell_listed_otherwise(Comparing& work, Node a, Node b) {
  const Row row = row_of(work, a, b, El::ingredient);
  if (std::find(row.moved.begin(), row.moved.end(), true) == row.moved.end()) return;
  Change change;
  change.kind = Change::Kind::reworded;
  change.topic = Topic::wording;
  change.what = work.to.name(b);
  change.text = "ingredients" + work.to.in_component(b) + " listed in another order";
  work.say(std::move(change), a, b);
}

/// Steps and ingredients that are in another component now.
void tell_carried_over(Comparing& work, El el) {
  for (const Node in_new : work.to.all(el)) {
    const Node in_old = work.pairs.in_old(in_new);
    if (in_old == fiche::none) continue;
    const Node was = work.from.around(in_old, El::component);
    const Node is = work.to.around(in_new, El::component);
    const bool stayed = was == fiche::none ? is == fiche::none : work.pairs.in_new(was) == is;
    if (stayed) continue;
    Change change;
    change.kind = Change::Kind::moved;
    change.topic = Topic::order;
    change.what = work.to.name(in_new);
    change.was = was == fiche::none ? "" : work.from.name(was);
    change.is = is == fiche::none ? "" : work.to.name(is);
    change.text = change.what + " now in the " + change.is + ", was in the " + change.was;
    work.say(std::move(change), in_old, in_new);
  }
}

}  // namespace

void compare_order(Comparing& work) {
  tell_moved(work, work.from.document().root(), work.to.document().root(), El::component);
  for (const Node component : work.to.all(El::component)) {
    const Node before = work.pairs.in_old(component);
    if (before == fiche::none) continue;
    tell_moved(work, before, component, El::step);
    tell_listed_otherwise(work, before, component);
  }
  tell_carried_over(work, El::step);
  tell_carried_over(work, El::ingredient);
}

}  // namespace tamis::change
