#include "core/flow/join.h"

namespace tamis::flow {

void Join::give(int step, bool going_on) {
  const std::vector<std::string_view>& makes = work_.fiche.steps[idx(step)].makes;
  if (!makes.empty()) return give_named(step);
  if (going_on) {
    std::vector<int> kept;
    for (const int use : at(step).takes) {
      const Use& taken = flow_.uses[idx(use)];
      if (taken.mark == fiche::none && !thing(taken.thing).id.empty()) kept.push_back(taken.thing);
    }
    for (const int was : kept) give_again(step, was);
    if (!kept.empty()) return;
  } else if (const int alone = taken_alone(step); alone >= 0) {
    return give_again(step, alone);
  }
  give_new(step, {});
}

void Join::give_named(int step) {
  int result = work_.results_of[idx(step)];
  for (const std::string_view id : work_.fiche.steps[idx(step)].makes) {
    at(step).gives.push_back(result);
    if (const int name = work_.name_of(id); name >= 0) work_.names[idx(name)].current = result;
    ++result;
  }
}

int Join::taken_alone(int step) {
  int alone = -1;
  for (const int use : at(step).takes) {
    const Use& taken = flow_.uses[idx(use)];
    if (!is_matter(taken.thing)) continue;
    if (alone >= 0 || says_how_much_of(taken)) return -1;
    alone = taken.thing;
  }
  if (alone < 0 || thing(alone).id.empty() || thing(alone).kind == Thing::Kind::component) return -1;
  if (thing(alone).kind == Thing::Kind::ingredient && has_taken_parts(alone)) return -1;
  const int name = work_.name_of(thing(alone).id);
  return thing(alone).kind == Thing::Kind::result || taken_later(name, step) ? alone : -1;
}

void Join::give_again(int step, int was) {
  const int made = give_new(step, thing(was).id);
  thing(made).name = thing(was).name;
  thing(made).was = was;
  if (const int name = work_.name_of(thing(was).id); name >= 0) work_.names[idx(name)].current = made;
}

int Join::give_new(int step, std::string_view id) {
  const int made = static_cast<int>(flow_.things.size());
  Thing& result = flow_.things.emplace_back();
  result.kind = Thing::Kind::result;
  result.id = result.name = id;
  result.node = at(step).node;
  result.component = at(step).component;
  result.maker = step;
  at(step).gives.push_back(made);
  return made;
}

}  // namespace tamis::flow
