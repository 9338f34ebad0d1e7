#include "core/flow/weigh.h"

#include <algorithm>

#include "core/flow/losses.h"

namespace tamis::flow {

using fiche::At;
using fiche::El;
using fiche::Node;

void Weigh::work_out(int index) {
  const Step& step = flow_.steps[idx(index)];
  for (const int use : step.takes) spread(flow_.uses[idx(use)].thing);
  for (const int use : step.takes) fill_up(step, use);
  in_[idx(index)] = sum_in(step);
  const double lost = !way_.most && step.optional ? no_losses(step) : losses(step, in_[idx(index)]);
  out_[idx(index)] = known(lost) ? std::max(0.0, in_[idx(index)] - lost) : unknown;
  if (step.gives.size() == 1) thing_[idx(step.gives.front())] = out_[idx(index)];
  const int component = flow_.thing_of(step.component);
  if (component < 0 || flow_.things[idx(component)].maker != index) return;
  set_component(step.component, out_[idx(index)]);
  if (step.gives.size() == 1) thing_[idx(step.gives.front())] = thing_[idx(component)];
}

double Weigh::sum_in(const Step& step) {
  double sum = 0;
  std::vector<int> whole_steps;  // of which all that was divided comes together again
  for (const int number : step.takes) {
    const Use& use = flow_.uses[idx(number)];
    const Line& line = lines_[idx(use.thing)];
    if (filled_up_in(step, use.thing)) continue;
    if (fills_up(step, line)) {
      sum += end_of(*line.total);
    } else if (known(use_[idx(number)])) {
      sum += use_[idx(number)];
    } else if (const int maker = all_comes_together(step, use); maker < 0) {
      return unknown;
    } else if (std::find(whole_steps.begin(), whole_steps.end(), maker) == whole_steps.end()) {
      whole_steps.push_back(maker);
      sum += out_[idx(maker)];
    }
  }
  return sum;
}

int Weigh::all_comes_together(const Step& step, const Use& use) const {
  const int maker = flow_.things[idx(use.thing)].maker;
  if (maker < 0 || use.take != Use::Take::all) return -1;
  const std::vector<int>& gives = flow_.steps[idx(maker)].gives;
  return gives.size() > 1 && takes_all(step, gives) ? maker : -1;
}

bool Weigh::takes_all(const Step& step, const std::vector<int>& things) const {
  return std::all_of(things.begin(), things.end(), [&](int thing) {
    return std::any_of(step.takes.begin(), step.takes.end(), [&](int use) {
      return flow_.uses[idx(use)].thing == thing && flow_.uses[idx(use)].take == Use::Take::all;
    });
  });
}

bool Weigh::holds_one_of(int thing, const std::vector<int>& wanted, std::size_t depth) const {
  if (std::find(wanted.begin(), wanted.end(), thing) != wanted.end()) return true;
  const int maker = flow_.things[idx(thing)].maker;
  if (maker < 0 || depth > flow_.steps.size() || flow_.things[idx(thing)].kind != Thing::Kind::result) return false;
  const std::vector<int>& takes = flow_.steps[idx(maker)].takes;
  return std::any_of(takes.begin(), takes.end(),
                     [&](int use) { return holds_one_of(flow_.uses[idx(use)].thing, wanted, depth + 1); });
}

bool Weigh::fills_up(const Step& step, const Line& line) const {
  return line.total && std::all_of(line.tops_up.begin(), line.tops_up.end(), [&](int wanted) {
           return std::any_of(step.takes.begin(), step.takes.end(), [&](int use) {
             return holds_one_of(flow_.uses[idx(use)].thing, {wanted});
           });
         });
}

bool Weigh::filled_up_in(const Step& step, int thing) const {
  return std::any_of(step.takes.begin(), step.takes.end(), [&](int number) {
    const Line& line = lines_[idx(flow_.uses[idx(number)].thing)];
    return fills_up(step, line) && holds_one_of(thing, line.tops_up);
  });
}

void Weigh::fill_up(const Step& step, int number) {
  const int topper = flow_.uses[idx(number)].thing;
  const Line& line = lines_[idx(topper)];
  if (!fills_up(step, line)) return;
  double missing = end_of(*line.total);
  for (const int other : step.takes) {
    if (other != number && holds_one_of(flow_.uses[idx(other)].thing, line.tops_up)) missing -= use_[idx(other)];
  }
  thing_[idx(topper)] = use_[idx(number)] = known(missing) ? std::max(0.0, missing) : unknown;
}

double Weigh::no_losses(const Step& step) {
  for (std::size_t i = 0; i < step.losses.size(); ++i) {
    loss_hull_[idx(step.index)][i].add(0);
    lost_.push_back({step.index, i, 0});
  }
  return 0;
}

double Weigh::losses(const Step& step, double in) {
  double left = in;
  std::size_t next = 0;
  const auto lose = [&](double grams) {
    lost_.push_back({step.index, next, grams});
    loss_hull_[idx(step.index)][next++].add(grams);
    left -= grams;
  };
  for (Node c = work_.document.first_child(step.node); c != fiche::none; c = work_.document.next(c)) {
    if (work_.document.el(c) == El::loss) lose(lost_by(work_.fiche.statement(c, At::amount), left, way_.most));
  }
  // A loss in words says what is removed, as weighed afterwards.
  if (work_.document.find(step.node, At::removes) != fiche::none) lose(next == 0 ? removed(step) : 0);
  if (work_.document.find(step.node, At::reduce_by) != fiche::none) {
    lose(lost_by(work_.fiche.statement(step.node, At::reduce_by), way_.most ? std::min(left, heaviest_in(step)) : left,
                  way_.most));
  }
  if (work_.document.find(step.node, At::reduce_to) != fiche::none) {
    lose(left - lost_by(work_.fiche.statement(step.node, At::reduce_to), left, way_.most));
  }
  return in - left;
}

double Weigh::heaviest_in(const Step& step) const {
  double most = 0;
  for (const int use : step.takes) most = std::max(most, known(use_[idx(use)]) ? use_[idx(use)] : 0);
  return most > 0 ? most : unknown;
}

double Weigh::removed(const Step& step) {
  std::string_view ids = work_.document.get(step.node, At::removes);
  double sum = 0;
  for (std::size_t at = 0; at < ids.size();) {
    const std::size_t end = std::min(ids.find(' ', at), ids.size());
    const int name = work_.name_of(ids.substr(at, end - at));
    at = end + 1;
    if (name < 0) continue;
    const int thing = work_.names[idx(name)].first;
    if (flow_.things[idx(thing)].counts) sum += mass_of(thing);
  }
  return sum;
}

}  // namespace tamis::flow
