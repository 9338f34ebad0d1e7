#include "core/tally/walk.h"

#include <algorithm>
#include <cmath>

#include "core/flow/losses.h"

namespace tamis::tally {

using fiche::At;
using fiche::El;
using fiche::Node;
using flow::Step;

// ---- losses
void Walk::losses(const Step& step, Mix& mix) {
  const auto unknown = [&] {
    mix.mass_known = false;
    doubt(Doubt::Kind::loss_unknown, step.gives.empty() ? std::string() : std::string(thing(step.gives.front()).name), 0, step.node);
  };
  std::optional<double> weighed;
  const bool removes = document_.find(step.node, At::removes) != fiche::none;
  for (Node c = document_.first_child(step.node); c != fiche::none; c = document_.next(c)) {
    if (document_.el(c) != El::loss) continue;
    const double lost = flow::lost_by(fiche_.statement(c, At::amount), mix.mass(), false);
    if (std::isnan(lost)) {
      unknown();
    } else if (document_.get(c, At::what) == "cooking") {
      mix.lose_water(lost);
    } else if (removes) {
      weighed = weighed.value_or(0) + lost;
    } else {
      mix.lose_of_all(lost);
    }
  }
  if (removes) take_out(step, weighed, mix);
  for (const At at : {At::reduce_by, At::reduce_to}) {
    if (document_.find(step.node, at) == fiche::none) continue;
    const double figure = flow::lost_by(fiche_.statement(step.node, at), mix.mass(), false);
    if (std::isnan(figure)) {
      unknown();
    } else {
      mix.lose_water(at == At::reduce_by ? figure : std::max(0.0, mix.mass() - figure));
    }
  }
}

void Walk::take_out(const Step& step, std::optional<double> weighed, Mix& mix) {
  std::string_view ids = document_.get(step.node, At::removes);
  std::vector<std::size_t> gone;
  double mass = 0;
  std::string names;
  for (std::size_t at = 0; at < ids.size();) {
    const std::size_t end = std::min(ids.find(' ', at), ids.size());
    const int named = flow_.thing_named(ids.substr(at, end - at));
    at = end + 1;
    if (named < 0) continue;
    for (std::size_t i = 0; i < mixes_[idx(named)].grams.size(); ++i) {
      if (mixes_[idx(named)].grams[i] <= 0 || mix.of(i) <= 0) continue;
      gone.push_back(i);
      mass += mix.of(i);
      names += (names.empty() ? "" : ", ") + entries[i].name;
    }
  }
  const double whole = mix.mass();
  const double share = weighed && mass > 0 ? std::min(1.0, *weighed / mass) : 1;
  for (const std::size_t entry : gone) mix.lose_entry(entry, share);
  if (weighed && *weighed > mass) mix.lose_of_all(*weighed - mass);
  // A bay leaf leaves a taste; five kilos of bones leave more than that.
  if (mass > 0.01 * whole) doubt(Doubt::Kind::taken_out, names, mass * (1 - share), step.node);
}

bool Walk::stated_by_a_step(Node owner, std::string_view what) const {
  return std::any_of(flow_.steps.begin(), flow_.steps.end(), [&](const Step& step) {
    if (step.component != owner && owner != flow_.whole.node) return false;
    return std::any_of(step.losses.begin(), step.losses.end(), [&](const flow::Lost& lost) {
      return lost.node != step.node && document_.get(lost.node, At::what) == what;
    });
  });
}

bool Walk::a_step_reduces(Node owner) const {
  return std::any_of(flow_.steps.begin(), flow_.steps.end(), [&](const Step& step) {
    return (step.component == owner || owner == flow_.whole.node) &&
           (document_.find(step.node, At::reduce_by) != fiche::none || document_.find(step.node, At::reduce_to) != fiche::none);
  });
}

void Walk::yield_losses(Node owner, Mix& mix) {
  const Node yield = document_.child(owner, El::yield);
  if (yield == fiche::none) return;
  for (Node c = document_.first_child(yield); c != fiche::none; c = document_.next(c)) {
    if (document_.el(c) != El::loss) continue;
    const std::string_view what = document_.get(c, At::what);
    if (stated_by_a_step(owner, what) || (what == "cooking" && a_step_reduces(owner))) continue;
    const double lost = flow::lost_by(fiche_.statement(c, At::amount), mix.mass(), false);
    if (std::isnan(lost)) {
      mix.mass_known = false;
      doubt(Doubt::Kind::loss_unknown, words_of(document_.get(owner, At::title)), 0, c);
    } else if (what == "cooking") {
      mix.lose_water(lost);
    } else {
      mix.lose_of_all(lost);
    }
  }
}

}  // namespace tamis::tally
