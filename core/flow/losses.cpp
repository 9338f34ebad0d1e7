#include "core/flow/losses.h"

#include <algorithm>
#include <limits>

#include "core/flow/amounts.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

bool is_of(const Work& work, const Step& step, Node owner) {
  return step.component == owner || owner == work.flow.whole.node;
}

bool stated_by_a_step(const Work& work, Node owner, std::string_view what) {
  return std::any_of(work.flow.steps.begin(), work.flow.steps.end(), [&](const Step& step) {
    return is_of(work, step, owner) && std::any_of(step.losses.begin(), step.losses.end(), [&](const Lost& lost) {
             return lost.node != step.node && work.document.get(lost.node, At::what) == what;
           });
  });
}

bool a_step_reduces(const Work& work, Node owner) {
  return std::any_of(work.flow.steps.begin(), work.flow.steps.end(), [&](const Step& step) {
    return is_of(work, step, owner) && (work.document.find(step.node, At::reduce_by) != fiche::none ||
                                        work.document.find(step.node, At::reduce_to) != fiche::none);
  });
}

}  // namespace

double lost_by(const fiche::Statement* said, double of, bool most) {
  if (said == nullptr || !said->share) return unknown;
  if (said->share->form == measure::Share::Form::fraction) return said->share->fraction.approximate() * of;
  if (said->share->form == measure::Share::Form::rest) return unknown;
  const auto grams = grams_of(said->share->amount, food::food_by_id("water"), {}, {});
  return grams ? std::min(most ? grams->high : grams->low, of) : unknown;
}

double after_yield_losses(const Work& work, Node owner, double mass, bool most) {
  const Node yield = work.document.child(owner, El::yield);
  if (yield == fiche::none) return mass;
  for (Node c = work.document.first_child(yield); c != fiche::none; c = work.document.next(c)) {
    if (work.document.el(c) != El::loss) continue;
    const std::string_view what = work.document.get(c, At::what);
    if (stated_by_a_step(work, owner, what) || (most && what == "cooking" && a_step_reduces(work, owner))) continue;
    mass -= lost_by(work.fiche.statement(c, At::amount), mass, most);
  }
  return mass;
}

}  // namespace tamis::flow
