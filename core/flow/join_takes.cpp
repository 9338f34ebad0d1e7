#include "core/flow/join.h"

#include <algorithm>

namespace tamis::flow {

using fiche::Node;

void Join::take_marked(int step) {
  for (const Meant& meant : meant_) {
    if (meant.mention || holds_otherwise(step, meant)) continue;
    const int use = add_use(meant.thing, step, meant.mark);
    if (second_of_a_choice(meant.thing)) flow_.uses[idx(use)].instead = true;
    divide(meant, step);
  }
  choose_among_results(step);
}

bool Join::holds_otherwise(int step, const Meant& meant) {
  if (meant.has_take || thing(meant.thing).uses.empty()) return false;
  return std::any_of(meant_.begin(), meant_.end(), [&](const Meant& other) {
    if (&other == &meant || other.mention || other.mark == meant.mark) return false;
    const Thing& taken = thing(other.thing);
    return taken.kind == Thing::Kind::result && taken.maker >= 0 && taken.maker != step && holds(taken.maker, meant);
  });
}

int Join::add_use(int index, int step, Node mark) {
  const int made = static_cast<int>(flow_.uses.size());
  Use& use = flow_.uses.emplace_back();
  use.thing = index;
  use.step = step;
  use.mark = mark;
  use.how = mark == fiche::none ? Use::How::carried : Use::How::marked;
  thing(index).uses.push_back(made);
  at(step).takes.push_back(made);
  return made;
}

bool Join::second_of_a_choice(int index) {
  if (!thing(index).second_choice) return false;
  const Node choice = document_.parent(thing(index).node);
  for (int i = index - 1; i >= 0 && document_.parent(thing(i).node) == choice; --i) {
    const int name = work_.name_of(thing(i).id);
    if (thing(i).kind == Thing::Kind::ingredient && name >= 0 && is_taken(name)) return true;
  }
  return false;
}

void Join::divide(const Meant& meant, int step) {
  if (meant.has_take || thing(meant.thing).kind != Thing::Kind::ingredient) return;
  for (std::size_t i = idx(meant.thing) + 1; i < flow_.things.size() && flow_.things[i].was == meant.thing; ++i) {
    Thing& part = flow_.things[i];
    if (part.kind == Thing::Kind::part && part.maker < 0) part.maker = step;
  }
}

void Join::choose_among_results(int step) {
  const std::vector<int>& takes = at(step).takes;
  for (std::size_t i = 1; i < takes.size(); ++i) {
    Use& later = flow_.uses[idx(takes[i])];
    Use& earlier = flow_.uses[idx(takes[i - 1])];
    if (later.mark == fiche::none || later.mark != earlier.mark) continue;
    const int a = thing(earlier.thing).maker;
    const int b = thing(later.thing).maker;
    if (a < 0 || b < 0 || thing(later.thing).kind != Thing::Kind::result) continue;
    seen_.assign(flow_.steps.size(), false);
    const bool ways = !at(a).branch.empty() && !at(b).branch.empty() && at(a).branch != at(b).branch;
    if (ways) {
      later.instead = true;
    } else if (is_in(earlier.thing, b)) {
      (at(b).optional ? later : earlier).instead = true;
    }
  }
}

}  // namespace tamis::flow
