#include "core/flow/join.h"

#include <algorithm>

namespace tamis::flow {

using fiche::At;
using fiche::El;
using fiche::Node;

void Join::read_marks(int step) {
  meant_.clear();
  const auto [from, to] = work_.marks_of[idx(step)];
  for (int i = from; i < to; ++i) {
    const Mark& mark = work_.marks[idx(i)];
    if (mark.name < 0) continue;
    Meant meant{mark.node, mark.name, meaning(mark.name, step), says_how_much(mark.node), false};
    const Thing& taken = thing(meant.thing);
    if (taken.kind == Thing::Kind::component && taken.node == at(step).component) continue;  // "the mousse", in it
    meant_.push_back(meant);
  }
  for (Meant& meant : meant_) {
    meant.mention = said_already(meant) || (line_ >= 0 && !may_stand_for_it(meant, step) && holds(line_, meant));
  }
}

int Join::meaning(int name, int step) {
  const Name& known = work_.names[idx(name)];
  int found = known.current >= 0 ? known.current : known.first;
  // A name kept on another branch is not known on this one.
  while (thing(found).kind == Thing::Kind::result && thing(found).was >= 0 && thing(found).maker >= 0 &&
         !at(thing(found).maker).branch.empty() && !at(step).branch.empty() &&
         at(thing(found).maker).branch != at(step).branch) {
    found = thing(found).was;
  }
  return found;
}

bool Join::says_how_much(Node mark) const {
  return document_.find(mark, At::take) != fiche::none || document_.child(mark, El::amount) != fiche::none;
}

void Join::forget_mentions() {
  for (Meant& meant : meant_) meant.mention = said_already(meant);
}

bool Join::said_already(const Meant& meant) const {
  for (const Meant& other : meant_) {
    if (&other == &meant) break;
    if (other.thing == meant.thing && !meant.has_take) return true;
  }
  if (meant.has_take) return false;
  return std::any_of(meant_.begin(), meant_.end(), [&](const Meant& other) {
    return &other != &meant && other.thing == meant.thing && other.has_take;
  });
}

bool Join::holds(int step, const Meant& meant) {
  if (meant.has_take || thing(meant.thing).uses.empty()) return false;
  const auto without_a_word = [&](int use) { return !says_how_much_of(flow_.uses[idx(use)]); };
  if (!std::all_of(thing(meant.thing).uses.begin(), thing(meant.thing).uses.end(), without_a_word)) return false;
  seen_.assign(flow_.steps.size(), false);
  return is_in(meant.thing, step);
}

bool Join::may_stand_for_it(const Meant& meant, int step) {
  if (thing(meant.thing).kind != Thing::Kind::result) return false;
  return at(step).optional || std::any_of(meant_.begin(), meant_.end(), [&](const Meant& other) {
    return &other != &meant && other.mark == meant.mark && thing(other.thing).kind == Thing::Kind::result;
  });
}

bool Join::is_in(int wanted, int step) {
  if (step < 0 || seen_[idx(step)]) return false;
  seen_[idx(step)] = true;
  for (const int use : at(step).takes) {
    const int taken = flow_.uses[idx(use)].thing;
    if (taken == wanted || is_in(wanted, thing(taken).maker)) return true;
  }
  return false;
}

}  // namespace tamis::flow
