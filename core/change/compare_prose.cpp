#include <algorithm>
#include <set>

#include "core/base/utf8.h"
#include "core/change/compare_marks.h"
#include "core/change/compare_work.h"
#include "core/change/compare_words.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

void say_marked_otherwise(Comparing& work, Node a, Node b, const std::string& where) {
  Change change;
  change.kind = Change::Kind::reworded;
  change.topic = Topic::wording;
  change.what = where;
  change.text = where + " marked otherwise, the words are the same";
  work.say(std::move(change), a, b);
}

/// A figure that the sentence has only on one side.
void say_figure(Comparing& work, Node in_old, Node in_new, const std::string& where) {
  const bool came = in_new != fiche::none;
  const Side& side = came ? work.to : work.from;
  const Node mark = came ? in_new : in_old;
  const std::string text = words_in_line(side, mark);
  Change change;
  change.kind = came ? Change::Kind::added : Change::Kind::removed;
  change.topic = in_safety(side, mark) ? Topic::safety : Topic::figures;
  if (side.around(mark, El::control) != fiche::none || in_gate(side, mark))
    change.hold = came ? Change::Hold::tightened : Change::Hold::loosened;
  change.what = where;
  (came ? change.is : change.was) = text;
  change.text = where + (came ? " now says " : " no longer says ") + text;
  work.say(std::move(change), in_old, in_new);
}

void compare_mode(Comparing& work, Node a, Node b, Manner manner) {
  const auto said = [](const Side& side, Node node) {
    const std::string_view mode = side.document().get(node, At::mode);
    return words_in_line(side, node) + (mode.empty() ? " (mode not stated)" : " " + std::string(mode));
  };
  Change change;
  change.topic = manner.topic;
  change.what = manner.subject;
  change.is = said(work.to, b);
  change.was = said(work.from, a);
  change.text = manner.subject + " " + change.is + ", was " + change.was;
  work.say(std::move(change), a, b);
}

/// A time in the sentence that the step states once more as its own is told once.
bool is_told_by_step(const Comparing& work, const fiche::Statement& was, const fiche::Statement& is) {
  const Node before = work.from.around(was.node, El::step);
  const Node step = work.to.around(is.node, El::step);
  if (before == fiche::none || step == fiche::none) return false;
  const auto same = [&](const Side& side, const fiche::Statement& one, Node in, At at) {
    const fiche::Statement* own = side.fiche().statement(in, at);
    return own != nullptr && relate(figure_of(side, *own), figure_of(side, one), 1, side, side).way == Relation::Way::same;
  };
  for (const At at : {At::unattended, At::hands})
    if (same(work.from, was, before, at) && same(work.to, is, step, at)) return true;
  return false;
}

void compare_mark(Comparing& work, Node a, Node b) {
  const El el = work.to.document().el(b);
  const Manner manner = manner_of(work, b, At::unknown);
  const bool other_mode = el == El::oven_temp && work.from.document().get(a, At::mode) != work.to.document().get(b, At::mode);
  if (other_mode) return compare_mode(work, a, b, manner);
  const fiche::Statement* was = work.from.fiche().statement(a);
  const fiche::Statement* is = work.to.fiche().statement(b);
  if (was != nullptr && is != nullptr) {
    const bool stays = manner.factor != 1 && relate(figure_of(work.from, *was), figure_of(work.to, *is), 1, work.from,
                                                    work.to).way == Relation::Way::same;
    if (!stays && !is_told_by_step(work, *was, *is)) tell_figures(work, *was, *is, manner);
  }
  compare_attributes(work, a, b);
}

std::string name_in_place(const Side& side, Node node) {
  const std::string own = side.name(node);
  const Node step = side.around(node, El::step);
  return step == node || step == fiche::none ? own + side.in_component(node) : own + " at " + side.name(step);
}

/// The same words in any order, whatever stops stand behind them.
bool same_bag(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  const auto bag = [](const std::vector<std::string>& words) {
    std::multiset<std::string> out;
    for (const std::string& word : words) out.insert(base::lower(word.substr(0, word.find_last_not_of(",.;:") + 1)));
    return out;
  };
  return bag(a) == bag(b);
}

/// Things go in in another order, which is told as such.
bool marks_moved(const Comparing& work, const MarkPairs& marks) {
  std::vector<std::pair<Node, Node>> takes;
  for (const auto& pair : marks.pairs)
    if (work.to.document().el(pair.second) == El::use) takes.push_back(pair);
  std::sort(takes.begin(), takes.end());
  return !std::is_sorted(takes.begin(), takes.end(), [](const auto& x, const auto& y) { return x.second < y.second; });
}

void compare_words(Comparing& work, Node a, Node b, const MarkPairs& marks, const Line& was, const Line& is) {
  const std::string where = name_in_place(work.to, b);
  if (was.words == is.words || (marks_moved(work, marks) && same_bag(was.words, is.words))) return;
  Change change;
  change.kind = Change::Kind::reworded;
  // Words of a limit may be the limit.
  change.topic = in_safety(work.to, b) ? Topic::safety : Topic::wording;
  change.what = where;
  change.is = joined(is.shown, 0, is.shown.size());
  change.was = joined(was.shown, 0, was.shown.size());
  change.text = where + " reads differently: " + differing_words(was, is);
  work.say(std::move(change), a, b);
}

}  // namespace

void compare_sentence(Comparing& work, Node a, Node b) {
  Line was = line_of(work.from, a);
  Line is = line_of(work.to, b);
  const MarkPairs marks = pair_marks(work, was, is);
  for (const auto& [old_mark, new_mark] : marks.pairs) compare_mark(work, old_mark, new_mark);
  if (!marks.only_old.empty() || !marks.only_new.empty()) {
    if (joined(was.shown, 0, was.shown.size()) == joined(is.shown, 0, is.shown.size()))
      return say_marked_otherwise(work, a, b, name_in_place(work.to, b));
    const std::string where = name_in_place(work.to, b);
    for (const Node mark : marks.only_new) say_figure(work, fiche::none, mark, where);
    for (const Node mark : marks.only_old) say_figure(work, mark, fiche::none, where);
    leave_out(was, marks.only_old);
    leave_out(is, marks.only_new);
  }
  compare_words(work, a, b, marks, was, is);
}

}  // namespace tamis::change
