#include "core/flow/weigh.h"

#include <algorithm>

namespace tamis::flow {

using fiche::At;

bool Weigh::happens(const Use& use) const {
  const Thing& thing = flow_.things[idx(use.thing)];
  if (!thing.counts || !of_this_variant(thing)) return false;
  if (!way_.most && thing.optional) return false;
  if (!way_.most && flow_.steps[idx(use.step)].optional && thing.kind != Thing::Kind::result) return false;
  return use.instead ? stands_in(use) : !stood_in_for(use);
}

bool Weigh::stands_in(const Use& use) const {
  const int maker = flow_.things[idx(use.thing)].maker;
  return way_.most && maker >= 0 && flow_.steps[idx(maker)].optional;
}

bool Weigh::stood_in_for(const Use& use) const {
  if (use.mark == fiche::none || !way_.most) return false;
  const std::vector<int>& takes = flow_.steps[idx(use.step)].takes;
  return std::any_of(takes.begin(), takes.end(), [&](int index) {
    const Use& other = flow_.uses[idx(index)];
    return &other != &use && other.mark == use.mark && other.instead && stands_in(other);
  });
}

bool Weigh::together(const Use& a, const Use& b) const {
  const Step& one = flow_.steps[idx(a.step)];
  const Step& other = flow_.steps[idx(b.step)];
  if (one.optional != other.optional) return false;
  return one.branch.empty() || other.branch.empty() || one.branch == other.branch;
}

double Weigh::stated_take(const Use& use, double whole) const {
  if (use.take == Use::Take::share) return use.share->approximate() * whole;
  if (use.take != Use::Take::amount) return 0;
  const auto amount = amount_taken(work_, use);
  if (!amount) return unknown;
  const fiche::Statement* repeat = work_.fiche.statement(flow_.steps[idx(use.step)].node, At::repeat);
  const double times = way_.most && repeat != nullptr && repeat->amount ? repeat->amount->middle_base().approximate() : 1;
  return times * end_of(*amount);
}

void Weigh::spread(int index) {
  if (spread_[idx(index)]) return;
  spread_[idx(index)] = true;
  const double whole = mass_of(index);
  const std::vector<int>& uses = flow_.things[idx(index)].uses;
  for (const int number : uses) {
    const Use& use = flow_.uses[idx(number)];
    double& grams = use_[idx(number)];
    if (!happens(use)) {
      grams = 0;
    } else if (use.take == Use::Take::all) {
      grams = whole;
    } else if (use.take == Use::Take::share || use.take == Use::Take::amount) {
      grams = stated_take(use, whole);
    } else {
      grams = left_for(number, uses, whole);
    }
  }
}

double Weigh::left_for(int number, const std::vector<int>& uses, double whole) const {
  const Use& use = flow_.uses[idx(number)];
  double left = whole;
  int rests = 0;
  std::vector<int> unstated;
  for (const int other_number : uses) {
    const Use& other = flow_.uses[idx(other_number)];
    if (!happens(other) || !together(use, other)) continue;
    left -= stated_take(other, whole);
    if (other.take == Use::Take::rest) ++rests;
    if (other.take == Use::Take::unstated || other.take == Use::Take::all) unstated.push_back(other_number);
  }
  left = known(left) ? std::max(0.0, left) : left;
  if (use.take == Use::Take::rest) return left / rests;
  if (rests > 0) return 0;
  const int taker = way_.most ? unstated.front() : unstated.back();
  return taker == number ? left : 0;
}

}  // namespace tamis::flow
