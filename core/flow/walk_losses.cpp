#include <algorithm>

#include "core/flow/losses.h"
#include "core/flow/walk.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Reason = Why::Reason;

constexpr double below_the_boil_k = 8;
constexpr double most_to_keep_track_of = 0.99;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }
bool known(double grams) { return !std::isnan(grams); }

}  // namespace

bool Walk::heats(const Doing& doing) {
  return std::any_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) { return action->heats(); });
}

void Walk::lose_stated(const Step& step, Point& made) {
  double left = made.grams;
  for (std::size_t i = 0; i < step.losses.size(); ++i) {
    const double grams = masses_->lost[first_loss_[idx(step.index)] + i];
    if (!known(grams) || !known(left) || grams <= 0 || left <= 0) continue;
    lose_one(step, step.losses[i].node, i, std::min(1.0, grams / left), made);
    left -= grams;
  }
}

void Walk::lose_one(const Step& step, Node node, std::size_t number, double share, Point& made) {
  if (node == step.node) {
    const bool removes = document_.find(step.node, At::removes) != fiche::none &&
                         (number == 0 || step.losses[number - 1].node != step.node);
    if (removes) return take_out(step, share, made);
    boil_off(step, share, made);
    const fiche::Statement* to = fiche_.statement(step.node, At::reduce_to);
    const bool weighed = to != nullptr && to->share && to->share->form == measure::Share::Form::amount;
    if (weighed) {  // whatever went off before, this is what there is now
      made.matter.off = 0;
      made.matter = weighed_anew(made.matter);
      made.why_grams = {};
    }
    return;
  }
  const std::string_view what = document_.get(node, At::what);
  if (what == "cooking" && !drips(step, made)) return boil_off(step, share, made);
  if (what == "cooking" || what == "straining") {
    take_unknown(made.matter, share);
    made.why_shares = {what == "cooking" ? Reason::juice : Reason::sieve, -1, step.index};
    out_.apart[idx(step.index)] = true;
  }
}

bool Walk::drips(const Step& step, const Point& made) const {
  const unsigned flesh = (1U << static_cast<unsigned>(food::Role::meat)) | (1U << static_cast<unsigned>(food::Role::fish));
  const auto& actions = doing_[idx(step.index)].actions;
  return (made.roles & flesh) != 0 || std::any_of(actions.begin(), actions.end(), [](const Action* action) {
           return action->rest == Action::Rest::drips || action->rest == Action::Rest::fat;
         });
}

void Walk::boil_off(const Step& step, double share, Point& made) {
  if (take_off(made.matter, share)) return keep_lines(step, share);
  out_.apart[idx(step.index)] = true;
  made.matter = unknown_matter();
  made.why_shares = {Reason::too_much_lost, -1, step.index};
}

void Walk::take_out(const Step& step, double share, Point& made) {
  take_unknown(made.matter, share);
  if (!made.why_shares.any() || share > 0.02) made.why_shares = {Reason::removed, -1, step.index};
  double* row = row_.data() + idx(step.index) * lines_;
  std::string_view ids = document_.get(step.node, At::removes);
  for (std::size_t at = 0; at < ids.size();) {
    const std::size_t end = std::min(ids.find(' ', at), ids.size());
    const int thing = flow_.thing_named(ids.substr(at, end - at));
    at = end + 1;
    if (thing >= 0 && out_.line_of[idx(thing)] >= 0) row[out_.line_of[idx(thing)]] = 0;
  }
  keep_lines(step, share);
}

void Walk::keep_lines(const Step& step, double lost) {
  if (lost >= most_to_keep_track_of) {
    out_.apart[idx(step.index)] = true;
    return;
  }
  double* row = row_.data() + idx(step.index) * lines_;
  for (std::size_t i = 0; i < lines_; ++i) row[i] /= 1 - lost;
}

void Walk::act(const Step& step, const Bath& bath, Point& made) {
  const Doing& doing = doing_[idx(step.index)];
  if (!doing.unknown.empty()) return forget(made, {Reason::action_unknown, -1, step.index});
  if (doing.nothing) return forget(made, {Reason::no_action, -1, step.index});
  const bool stated = !step.losses.empty() || divides(step);
  const StepSays& says = says_[idx(step.index)];
  const bool stays_below = says.hottest && says.hottest->high < places_.boiling().low - below_the_boil_k;
  lose_unsaid(made, {doing, bath, pieces_in(step), stated, stays_below, covered_[idx(step.index)], minutes_[idx(step.index)], step.index});
  if (heats(doing)) made.matter[Constituent::alcohol].low = 0;  // how much of it goes is not known
}

double Walk::pieces_in(const Step& step) const {
  if (out_.apart[idx(step.index)]) return 1;
  double share = 0;
  const double* row = row_.data() + idx(step.index) * lines_;
  for (const std::size_t line : pieces_) share += row[line];
  return share;
}

void Walk::lose_in_yield(const Step& step, Point& point, double before) {
  const double lost = 1 - point.grams / before;
  if (!(lost > 0)) return;
  const Node yield = document_.child(step.component, El::yield);
  for (Node c = yield == fiche::none ? yield : document_.first_child(yield); c != fiche::none; c = document_.next(c)) {
    if (document_.el(c) != El::loss || document_.get(c, At::what) != "cooking") continue;
    const double stated = lost_by(fiche_.statement(c, At::amount), before, masses_->most) / before;
    if (!known(stated)) continue;
    point.matter.off = 0;
    const double share = std::min(stated, lost);
    if (drips(step, point)) {
      take_unknown(point.matter, share);
      point.why_shares = {Reason::juice, -1, step.index};
    } else {
      boil_off(step, share, point);
    }
    return;
  }
}

}  // namespace tamis::flow
