#include "core/flow/join.h"

namespace tamis::flow {

using fiche::At;
using fiche::Node;

void Join::run() {
  find_returns();
  Node component = fiche::none;
  for (std::size_t i = 0; i < flow_.steps.size(); ++i) {
    const int step = static_cast<int>(i);
    if (i == 0 || flow_.steps[i].component != component) {
      component = flow_.steps[i].component;
      open_component(component, step);
    }
    visit(step);
  }
  for (Thing& thing : flow_.things) {
    if (thing.kind == Thing::Kind::component) thing.maker = last_step_of(thing.node);
  }
  say_how_taken(work_);
}

void Join::find_returns() {
  for (Thing& thing : flow_.things) {
    if (thing.kind != Thing::Kind::ingredient) continue;
    const int name = work_.name_of(document_.get(thing.node, At::result));
    if (name >= 0) thing.returns = work_.names[static_cast<std::size_t>(name)].first;
  }
}

void Join::open_component(Node component, int first_step) {
  line_ = side_ = base_ = outside_ = -1;
  branch_ = {};
  ends_.clear();
  tagged_ = false;
  for (std::size_t i = static_cast<std::size_t>(first_step);
       i < flow_.steps.size() && flow_.steps[i].component == component; ++i) {
    const auto [from, to] = work_.marks_of[i];
    tagged_ = tagged_ || from < to;
  }
  for (Total& total : flow_.components) {
    if (total.node == component) total.marked = tagged_;
  }
  if (component != fiche::none && !document_.get(component, At::from).empty()) add_outside(component);
}

void Join::add_outside(Node component) {
  outside_ = static_cast<int>(flow_.things.size());
  Thing& made = flow_.things.emplace_back();
  made.kind = Thing::Kind::result;
  made.node = made.component = component;
  made.name = document_.get(component, At::title);
}

void Join::visit(int step) {
  if (at(step).aside) return;
  enter_branch(step);
  read_marks(step);
  if (prepares_aside(step)) {
    take_marked(step);
    give(step, false);
    if (line_ < 0) side_ = step;
    return;
  }
  const bool going_on = join_line(step);
  if (line_ >= 0 && at(step).before != line_) forget_mentions();
  if (!going_on && meant_.empty() && at(step).takes.empty() && work_.fiche.steps[idx(step)].makes.empty() && tagged_) {
    at(step).aside = true;
    return;
  }
  take_marked(step);
  give(step, going_on);
  leave(step);
}

void Join::enter_branch(int step) {
  const std::string_view branch = at(step).branch;
  if (branch == branch_) return;
  if (branch.empty()) {
    waiting_ends_ = ends_;
    ends_.clear();
  } else if (branch_.empty()) {
    base_ = line_;
  } else {
    if (line_ >= 0) ends_.push_back(line_);
    line_ = base_;
  }
  branch_ = branch;
}

void Join::leave(int step) {
  const bool other_batch = !at(step).branch.empty() && document_.get(at(step).node, At::branch).empty();
  if (!other_batch) line_ = step;
  side_ = -1;
  for (const int end : waiting_ends_) at(step).waits_for.push_back(end);
  waiting_ends_.clear();
}

int Join::last_step_of(Node component) {
  for (std::size_t i = flow_.steps.size(); i > 0; --i) {
    const Step& step = flow_.steps[i - 1];
    if (step.component == component && !step.aside) return step.index;
  }
  return -1;
}

void join_steps(Work& work) { Join(work).run(); }

}  // namespace tamis::flow
