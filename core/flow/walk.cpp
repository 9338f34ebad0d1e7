#include "core/flow/walk.h"

#include <algorithm>

#include "core/flow/stated_time.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Reason = Why::Reason;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }
bool known(double grams) { return !std::isnan(grams); }

/// Foods that stay in a sieve.
bool is_in_pieces(unsigned roles) {
  using food::Role;
  unsigned pieces = 0;
  for (const Role role : {Role::vegetable, Role::fruit, Role::meat, Role::fish, Role::spice, Role::nut, Role::flavouring,
                          Role::garnish, Role::other}) {
    pieces |= 1U << static_cast<unsigned>(role);
  }
  return (roles & pieces) != 0 || roles == 0;
}

bool same(const std::vector<double>& a, const std::vector<double>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](double x, double y) { return x == y || (!known(x) && !known(y)); });
}

}  // namespace

States Walk::run(std::vector<Point> start) {
  start_ = std::move(start);
  prepare();
  for (std::size_t way = 0; way < flow_.ways.size(); ++way) {
    if (goes_as_before(way)) continue;
    masses_ = &flow_.ways[way];
    first_ = way == 0;
    walk();
  }
  return std::move(out_);
}

bool Walk::goes_as_before(std::size_t way) const {
  if (way == 0) return false;
  const Masses& before = flow_.ways[way - 1];
  const Masses& here = flow_.ways[way];
  const auto may_be_left_out = [](const auto& one) { return one.optional; };
  return here.variant == before.variant && same(here.things, before.things) && same(here.uses, before.uses) &&
         same(here.in, before.in) && same(here.out, before.out) && same(here.lost, before.lost) &&
         std::none_of(flow_.things.begin(), flow_.things.end(), may_be_left_out) &&
         std::none_of(flow_.steps.begin(), flow_.steps.end(), may_be_left_out);
}

void Walk::prepare() {
  out_.things.resize(flow_.things.size());
  out_.uses.resize(flow_.uses.size());
  out_.steps.resize(flow_.steps.size());
  out_.line_of.assign(flow_.things.size(), -1);
  for (std::size_t i = 0; i < flow_.things.size(); ++i) {
    if (flow_.things[i].kind == Thing::Kind::result || flow_.things[i].kind == Thing::Kind::component) continue;
    out_.line_of[i] = static_cast<int>(lines_++);
    if (is_in_pieces(start_[i].roles)) pieces_.push_back(static_cast<std::size_t>(out_.line_of[i]));
    if (flow_.things[i].kind == Thing::Kind::part) parts_.push_back(static_cast<int>(i));
  }
  out_.lines.assign(flow_.steps.size() * lines_, {});
  out_.apart.assign(flow_.steps.size(), false);
  going_in_.resize(flow_.uses.size());
  std::size_t lost = 0;
  for (const Step& step : flow_.steps) {
    doing_.push_back(doing_of(fiche_, fiche_.steps[idx(step.index)]));
    says_.push_back(read_step_says(fiche_, flow_, step, heats(doing_.back()), poaches(doing_.back()), going_in_));
    const StepLength length = heats(doing_.back()) ? read_length(fiche_, step.node) : StepLength{};
    seconds_.push_back(static_cast<double>(length.whole.least));
    minutes_.push_back(length.stated && length.whole.most ? std::optional(static_cast<double>(*length.whole.most) / 60) : std::nullopt);
    covered_.push_back(heats(doing_.back()) && is_covered(document_, step.node));
    first_loss_.push_back(lost);
    lost += step.losses.size();
  }
}

void Walk::walk() {
  points_ = start_;
  in_.assign(flow_.uses.size(), {});
  after_.assign(flow_.steps.size(), {});
  row_.assign(flow_.steps.size() * lines_, 0);
  for (std::size_t i = 0; i < points_.size(); ++i) {
    if (flow_.things[i].maker < 0 || flow_.things[i].kind == Thing::Kind::part) set_grams(static_cast<int>(i));
  }
  components_without_steps();
  for (const int step : flow_.order) work_out(flow_.steps[idx(step)]);
  for (const int step : flow_.circle) forget(after_[idx(step)], {Reason::circle, -1, step});
  keep();
}

void Walk::set_grams(int thing) {
  Point& point = points_[idx(thing)];
  point.grams = masses_->things[idx(thing)];
  if (!point.weighed() && !point.why_grams.any()) point.why_grams = {Reason::amount_unknown, thing, -1};
}

void Walk::keep() {
  for (std::size_t i = 0; i < points_.size(); ++i) widen(out_.things[i], points_[i], first_);
  for (std::size_t i = 0; i < in_.size(); ++i) widen(out_.uses[i], in_[i], first_);
  for (std::size_t i = 0; i < after_.size(); ++i) widen(out_.steps[i], after_[i], first_);
  for (std::size_t i = 0; i < row_.size(); ++i) {
    Range& line = out_.lines[i];
    line = first_ ? Range{row_[i], row_[i]} : Range{std::min(line.low, row_[i]), std::max(line.high, row_[i])};
  }
}

void Walk::components_without_steps() {
  for (std::size_t i = 0; i < flow_.things.size(); ++i) {
    const Thing& thing = flow_.things[i];
    if (thing.kind != Thing::Kind::component || thing.maker >= 0) continue;
    if (document_.get(thing.node, At::from).empty()) {
      std::vector<Going> goings;
      for (std::size_t j = 0; j < flow_.things.size(); ++j) {
        const Thing& other = flow_.things[j];
        if (other.kind != Thing::Kind::ingredient || other.component != thing.node || !other.counts) continue;
        if (other.second_choice || !of_this_variant(other) || (other.optional && !masses_->most)) continue;
        goings.push_back({&points_[j], other.trace ? 0 : points_[j].grams, static_cast<int>(j)});
      }
      points_[i] = mix(goings, -1);
    }
    set_grams(static_cast<int>(i));
  }
}

bool Walk::of_this_variant(const Thing& thing) const {
  if (thing.variant < 0) return true;
  int last = 0;
  for (const Thing& other : flow_.things) {
    if (other.component == thing.component) last = std::max(last, other.variant);
  }
  return thing.variant == std::min(masses_->variant, last);
}

void Walk::work_out(const Step& step) {
  goings_.clear();
  Bath bath;
  for (const int use : step.takes) take(step, use, bath);
  Point& made = after_[idx(step.index)];
  made = mix(goings_, step.index);
  const double in = masses_->in[idx(step.index)];
  if (made.weighed() && known(in)) made.grams = in;
  hold_lines(step);
  const bool left_out = step.optional && !masses_->most;
  meet(step, made, bath, left_out);
  if (!left_out) {
    lose_stated(step, made);
    if (!goings_.empty()) act(step, bath, made);
  }
  if (goings_.empty()) made.bath = bath;
  settle_in(step, made);
  if (made.weighed()) made.grams = masses_->out[idx(step.index)];
  if (made.weighed() == false && !made.why_grams.any()) made.why_grams = {Reason::amount_unknown, -1, step.index};
  give(step, made);
}

void Walk::take(const Step& step, int number, Bath& bath) {
  const Use& use = flow_.uses[idx(number)];
  const Thing& thing = flow_.things[idx(use.thing)];
  Point& point = in_[idx(number)];
  point = points_[idx(comes_back(step, thing) ? thing.returns : use.thing)];
  // Where an unknown action has left no mass, there is none to take of, unless the mark says how much.
  const bool lost_sight = thing.kind == Thing::Kind::result && !point.weighed() && use.take != Use::Take::amount;
  const double grams = lost_sight ? point.grams : masses_->uses[idx(number)];
  point.grams = thing.trace ? 0 : grams;
  if (use.take == Use::Take::amount) point.matter = weighed_anew(point.matter);
  if (!point.weighed() && !point.why_grams.any()) point.why_grams = {Reason::amount_unknown, use.thing, step.index};
  warm_up(step, number, point);
  if (!thing.counts) {
    const std::string_view purpose = document_.get(thing.node, At::purpose);
    if (purpose != "bath" && purpose != "boiling") return;
    bath.fat = bath.fat || point.matter[Constituent::fat].low > 0.5;
    bath.water = bath.water || point.matter[Constituent::fat].low <= 0.5;
    return;
  }
  if (point.bath.water || point.bath.fat) {
    bath = {bath.water || point.bath.water, bath.fat || point.bath.fat};
    return;
  }
  if (grams == 0 && !thing.trace) return;  // does not happen on this way
  if (!known(grams) && known(masses_->in[idx(step.index)]) && thing.maker >= 0) {
    // All that was divided comes together again.
    const bool taken = std::any_of(goings_.begin(), goings_.end(), [&](const Going& going) { return going.point == &after_[idx(thing.maker)]; });
    if (!taken) goings_.push_back({&after_[idx(thing.maker)], after_[idx(thing.maker)].grams, use.thing});
    return;
  }
  goings_.push_back({&point, point.grams, use.thing});
}

bool Walk::comes_back(const Step& step, const Thing& thing) const {
  if (thing.returns < 0) return false;
  const int maker = flow_.things[idx(thing.returns)].maker;
  return maker >= 0 && std::find(step.waits_for.begin(), step.waits_for.end(), maker) != step.waits_for.end();
}

void Walk::hold_lines(const Step& step) {
  const Point& made = after_[idx(step.index)];
  double* row = row_.data() + idx(step.index) * lines_;
  if (!made.weighed()) out_.apart[idx(step.index)] = true;
  if (!made.weighed() || made.grams <= 0) return;
  double all = 0;
  for (const Going& going : goings_) all += going.grams;
  for (const Going& going : goings_) {
    if (going.grams <= 0) continue;
    if (const int line = out_.line_of[idx(going.thing)]; line >= 0) {
      row[line] += going.grams / all;
      continue;
    }
    const int maker = flow_.things[idx(going.thing)].maker;
    if (maker < 0) continue;
    const bool in_part = going.point != &after_[idx(maker)] && divides(flow_.steps[idx(maker)]);
    if (out_.apart[idx(maker)] || in_part) out_.apart[idx(step.index)] = true;
    const double* from = row_.data() + idx(maker) * lines_;
    for (std::size_t i = 0; i < lines_; ++i) row[i] += from[i] * going.grams / all;
  }
}

bool Walk::divides(const Step& step) const {
  if (step.gives.size() < 2) return false;
  const Doing& doing = doing_[idx(step.index)];
  return doing.actions.empty() || !std::all_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) {
    return action->word == "portion" || action->word == "divide" || action->word == "cut" || action->word == "scale" ||
           action->word == "weigh";
  });
}

void Walk::give(const Step& step, Point& made) {
  for (const int thing : step.gives) points_[idx(thing)] = made;
  if (step.gives.size() > 1) {
    for (const int thing : step.gives) divide(step, thing);
  }
  for (const int part : parts_) {
    if (flow_.things[idx(part)].maker == step.index) take_heat(points_[idx(part)], made);
  }
  const int component = flow_.thing_of(step.component);
  if (component < 0 || flow_.things[idx(component)].maker != step.index) return;
  points_[idx(component)] = made;
  if (made.weighed()) {
    points_[idx(component)].grams = masses_->things[idx(component)];
    lose_in_yield(step, points_[idx(component)], made.grams);
  }
  if (step.gives.size() == 1) points_[idx(step.gives.front())] = points_[idx(component)];
}

void Walk::divide(const Step& step, int thing) {
  Point& point = points_[idx(thing)];
  point.grams = masses_->things[idx(thing)];
  const Why why{Reason::divided, thing, step.index};
  point.why_grams = why;
  if (!divides(step)) return;
  point.matter = unknown_matter();
  point.why_shares = why;
}

}  // namespace tamis::flow
