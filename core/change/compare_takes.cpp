#include <algorithm>
#include <map>

#include "core/change/compare_marks.h"
#include "core/change/compare_work.h"
#include "core/change/compare_words.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

/// A taking by a step, under the name that the new fiche has for what is taken.
struct Take {
  Node step = fiche::none;
  Node mark = fiche::none;
  std::string of;
};

std::vector<Take> takes_of(const Comparing& work, const Side& side, bool old) {
  std::vector<Take> out;
  for (const fiche::Step& step : side.fiche().steps) {
    for (const Node mark : step.uses) {
      for (const std::string& id : words_of(side.document().get(mark, At::of)))
        out.push_back({step.node, mark, old ? work.pairs.id_in_new(id) : id});
    }
  }
  return out;
}

/// The taking's step as the new fiche has it; the old one's own number, out of its reach, where that is gone.
Node step_in_new(const Comparing& work, const Take& take, bool old) {
  return old ? work.pairs.in_new(take.step) : take.step;
}

void tell_take(Comparing& work, const Take* was, const Take* is) {
  Change change;
  change.topic = Topic::order;
  const Side& side = is == nullptr ? work.from : work.to;
  const Take& take = is == nullptr ? *was : *is;
  change.what = words_in_line(side, take.mark);
  if (is != nullptr) change.is = work.to.name(is->step);
  if (was != nullptr) change.was = work.from.name(was->step);
  if (was != nullptr && is != nullptr) {
    change.kind = Change::Kind::moved;
    change.text = change.what + " now goes in at " + change.is + ", was at " + change.was;
  } else {
    change.kind = is != nullptr ? Change::Kind::added : Change::Kind::removed;
    change.text = (is != nullptr ? change.is + " now takes " : change.was + " no longer takes ") + change.what;
  }
  work.say(std::move(change), was == nullptr ? fiche::none : was->mark, is == nullptr ? fiche::none : is->mark);
}

bool gone_or_new(const Comparing& work, const Take& take, bool old) {
  return (old ? work.pairs.in_new(take.step) : work.pairs.in_old(take.step)) == fiche::none;
}

/// What is left when the takings of the same thing by the same step are set against each other.
void tell_moved_takes(Comparing& work) {
  std::vector<Take> was = takes_of(work, work.from, true);
  std::vector<Take> is = takes_of(work, work.to, false);
  std::multimap<std::pair<Node, std::string>, std::size_t> open;
  for (std::size_t i = 0; i < was.size(); ++i) {
    if (const Node step = step_in_new(work, was[i], true); step != fiche::none) open.emplace(std::pair(step, was[i].of), i);
  }
  std::vector<bool> met(was.size(), false);
  std::vector<const Take*> left;
  for (const Take& take : is) {
    const auto found = open.find(std::pair(take.step, take.of));
    if (found == open.end()) {
      left.push_back(&take);
      continue;
    }
    met[found->second] = true;
    open.erase(found);
  }
  std::multimap<std::string, const Take*> gone;
  for (std::size_t i = 0; i < was.size(); ++i)
    if (!met[i]) gone.emplace(was[i].of, &was[i]);
  for (const Take* take : left) {
    const auto found = gone.find(take->of);
    const Take* before = found == gone.end() ? nullptr : found->second;
    if (found != gone.end()) gone.erase(found);
    if (before != nullptr || !gone_or_new(work, *take, false)) tell_take(work, before, take);
  }
  for (const auto& [of, take] : gone)
    if (!gone_or_new(work, *take, true)) tell_take(work, take, nullptr);
}

/// What goes in first within one step.
void tell_order_in_step(Comparing& work, Node before, Node step) {
  const Line was = line_of(work.from, before);
  const Line is = line_of(work.to, step);
  std::vector<std::pair<Node, Node>> takes;
  for (const auto& pair : pair_marks(work, was, is).pairs)
    if (work.to.document().el(pair.second) == El::use) takes.push_back(pair);
  std::sort(takes.begin(), takes.end(), [](const auto& x, const auto& y) { return x.second < y.second; });
  std::vector<Standing> standing;
  for (const auto& [a, b] : takes) {
    const std::string words = words_in_line(work.from, a);
    const std::string other = words_in_line(work.to, b);
    standing.push_back({a, words.size() + other.size(), std::min(words, other) + std::max(words, other)});
  }
  const std::vector<bool> moved = moved_among(standing);
  for (std::size_t i = 0; i < takes.size(); ++i) {
    if (!moved[i]) continue;
    const auto name = [&](std::size_t k) { return words_in_line(work.to, takes[k].second); };
    std::string where;
    for (std::size_t k = i + 1; k < takes.size() && where.empty(); ++k)
      if (!moved[k] && takes[k].first < takes[i].first) where = " before the " + name(k);
    for (std::size_t k = i; k-- > 0 && where.empty();)
      if (!moved[k] && takes[k].first > takes[i].first) where = " after the " + name(k);
    Change change;
    change.kind = Change::Kind::moved;
    change.topic = Topic::order;
    change.what = name(i);
    change.text = "at " + work.to.name(step) + ", " + change.what + " now goes in" + where;
    work.say(std::move(change), takes[i].first, takes[i].second);
  }
}

}  // namespace

void compare_takes(Comparing& work) {
  tell_moved_takes(work);
  for (const fiche::Step& step : work.to.fiche().steps) {
    const Node before = work.pairs.in_old(step.node);
    if (before != fiche::none) tell_order_in_step(work, before, step.node);
  }
}

}  // namespace tamis::change
