#include "core/rules/heated.h"

#include <algorithm>
#include <vector>

#include "core/flow/actions.h"
#include "core/flow/do_actions.h"
#include "core/rules/contents.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Steps one after the other, each once; the first is where it begins.
class Round {
 public:
  Round(const Check& check, int first) : seen_(check.flow.steps.size(), 0) { add(first); }
  void add(int step) {
    if (step < 0 || seen_[at(step)] != 0) return;
    seen_[at(step)] = 1;
    open_.push_back(step);
  }
  /// -1 when there is none left.
  int next() {
    if (open_.empty()) return -1;
    const int step = open_.back();
    open_.pop_back();
    return step;
  }

 private:
  std::vector<char> seen_;
  std::vector<int> open_;
};

}  // namespace

bool does(const Check& check, int step, std::initializer_list<std::string_view> words) {
  const auto wanted = [words](std::string_view word) { return std::find(words.begin(), words.end(), word) != words.end(); };
  const fiche::Step& here = check.fiche.steps[at(check.flow.steps[at(step)].index)];
  if (!here.actions.empty()) return std::any_of(here.actions.begin(), here.actions.end(), wanted);
  const flow::Doing doing = flow::doing_of(check.fiche, here);
  return std::any_of(doing.actions.begin(), doing.actions.end(),
                     [&](const flow::Action* action) { return wanted(action->word); });
}

bool done_before(const Check& check, int step, std::initializer_list<std::string_view> words) {
  Round round(check, step);
  for (int here = round.next(); here >= 0; here = round.next()) {
    if (does(check, here, words)) return true;
    for (const int use : check.flow.steps[at(here)].takes)
      round.add(check.flow.things[at(check.flow.uses[at(use)].thing)].maker);
  }
  return false;
}

bool may_heat(const Check& check, int step) {
  const auto& actions = check.fiche.steps[at(check.flow.steps[at(step)].index)].actions;
  return std::any_of(actions.begin(), actions.end(), [](std::string_view word) {
    const flow::Action* action = flow::action_named(word);
    return action == nullptr || action->heats();
  });
}

bool heated_before(const Check& check, int step, food::Role role) {
  Round round(check, step);
  for (int here = round.next(); here >= 0; here = round.next()) {
    if (here != step && may_heat(check, here) && contents_of(check, here).has(role)) return true;
    for (const int use : check.flow.steps[at(here)].takes)
      round.add(check.flow.things[at(check.flow.uses[at(use)].thing)].maker);
  }
  return false;
}

bool heated_later(const Check& check, int step) {
  const flow::Flow& flow = check.flow;
  Round round(check, step);
  for (int here = round.next(); here >= 0; here = round.next()) {
    const bool silent = check.fiche.steps[at(flow.steps[at(here)].index)].actions.empty();
    if (here != step && (silent || may_heat(check, here))) return true;
    for (const int given : flow.steps[at(here)].gives) {
      for (const int use : flow.things[at(given)].uses) round.add(flow.uses[at(use)].step);
    }
    for (const flow::Thing& thing : flow.things) {
      if (thing.kind != flow::Thing::Kind::component || thing.maker != here) continue;
      for (const int use : thing.uses) round.add(flow.uses[at(use)].step);
    }
  }
  return false;
}

}  // namespace tamis::rules
