#include "core/flow/states.h"

#include <algorithm>

#include "core/flow/do_actions.h"
#include "core/flow/losses.h"
#include "core/flow/point.h"

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

class Walk {
 public:
  Walk(const fiche::Fiche& fiche, const Flow& flow) : fiche_(fiche), flow_(flow), document_(*fiche.document) {}

  States run(std::vector<Point> start) {
    start_ = std::move(start);
    prepare();
    for (std::size_t way = 0; way < flow_.ways.size(); ++way) {
      masses_ = &flow_.ways[way];
      first_ = way == 0;
      walk();
    }
    return std::move(out_);
  }

 private:
  // ---- before
  void prepare() {
    out_.things.resize(flow_.things.size());
    out_.uses.resize(flow_.uses.size());
    out_.steps.resize(flow_.steps.size());
    out_.line_of.assign(flow_.things.size(), -1);
    for (std::size_t i = 0; i < flow_.things.size(); ++i) {
      if (flow_.things[i].kind == Thing::Kind::result || flow_.things[i].kind == Thing::Kind::component) continue;
      out_.line_of[i] = static_cast<int>(lines_++);
    }
    out_.lines.assign(flow_.steps.size() * lines_, {});
    out_.apart.assign(flow_.steps.size(), false);
    std::size_t lost = 0;
    for (const Step& step : flow_.steps) {
      doing_.push_back(doing_of(fiche_, fiche_.steps[idx(step.index)]));
      first_loss_.push_back(lost);
      lost += step.losses.size();
    }
  }

  // ---- one way
  void walk() {
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

  void set_grams(int thing) {
    Point& point = points_[idx(thing)];
    point.grams = masses_->things[idx(thing)];
    if (!point.weighed() && !point.why_grams.any()) point.why_grams = {Reason::amount_unknown, thing, -1};
  }

  void keep() {
    for (std::size_t i = 0; i < points_.size(); ++i) widen(out_.things[i], points_[i], first_);
    for (std::size_t i = 0; i < in_.size(); ++i) widen(out_.uses[i], in_[i], first_);
    for (std::size_t i = 0; i < after_.size(); ++i) widen(out_.steps[i], after_[i], first_);
    for (std::size_t i = 0; i < row_.size(); ++i) {
      Range& line = out_.lines[i];
      line = first_ ? Range{row_[i], row_[i]} : Range{std::min(line.low, row_[i]), std::max(line.high, row_[i])};
    }
  }

  /// Nothing is done to what they hold: they are what goes in.
  void components_without_steps() {
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

  [[nodiscard]] bool of_this_variant(const Thing& thing) const {
    if (thing.variant < 0) return true;
    int last = 0;
    for (const Thing& other : flow_.things) {
      if (other.component == thing.component) last = std::max(last, other.variant);
    }
    return thing.variant == std::min(masses_->variant, last);
  }

  // ---- a step
  void work_out(const Step& step) {
    goings_.clear();
    Bath bath;
    for (const int use : step.takes) take(step, use, bath);
    Point& made = after_[idx(step.index)];
    made = mix(goings_, step.index);
    const double in = masses_->in[idx(step.index)];
    if (made.weighed() && known(in)) made.grams = in;
    hold_lines(step);
    const bool left_out = step.optional && !masses_->most;
    if (!left_out) {
      lose_stated(step, made);
      if (!goings_.empty()) act(step, bath, made);
    }
    if (made.weighed()) made.grams = masses_->out[idx(step.index)];
    if (made.weighed() == false && !made.why_grams.any()) made.why_grams = {Reason::amount_unknown, -1, step.index};
    give(step, made);
  }

  void take(const Step& step, int number, Bath& bath) {
    const Use& use = flow_.uses[idx(number)];
    const Thing& thing = flow_.things[idx(use.thing)];
    Point& point = in_[idx(number)];
    point = points_[idx(comes_back(step, thing) ? thing.returns : use.thing)];
    // Where an unknown action has left no mass, there is none to take of, unless the mark says how much.
    const bool lost_sight = thing.kind == Thing::Kind::result && !point.weighed() && use.take != Use::Take::amount;
    const double grams = lost_sight ? point.grams : masses_->uses[idx(number)];
    point.grams = thing.trace ? 0 : grams;
    if (!point.weighed() && !point.why_grams.any()) point.why_grams = {Reason::amount_unknown, use.thing, step.index};
    if (!thing.counts) {
      const std::string_view purpose = document_.get(thing.node, At::purpose);
      if (purpose != "bath" && purpose != "boiling") return;
      bath.fat = bath.fat || point.matter[Constituent::fat].low > 0.5;
      bath.water = bath.water || point.matter[Constituent::fat].low <= 0.5;
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

  /// What an earlier step makes, as an ingredient.
  [[nodiscard]] bool comes_back(const Step& step, const Thing& thing) const {
    if (thing.returns < 0) return false;
    const int maker = flow_.things[idx(thing.returns)].maker;
    return maker >= 0 && std::find(step.waits_for.begin(), step.waits_for.end(), maker) != step.waits_for.end();
  }

  /// The share of every line in what goes in.
  void hold_lines(const Step& step) {
    const Point& made = after_[idx(step.index)];
    double* row = &row_[idx(step.index) * lines_];
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
      const double* from = &row_[idx(maker) * lines_];
      for (std::size_t i = 0; i < lines_; ++i) row[i] += from[i] * going.grams / all;
    }
  }

  /// Into several things that are not alike.
  [[nodiscard]] bool divides(const Step& step) const {
    if (step.gives.size() < 2) return false;
    const Doing& doing = doing_[idx(step.index)];
    return doing.actions.empty() || !std::all_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) {
      return action->word == "portion" || action->word == "divide" || action->word == "cut" || action->word == "scale" ||
             action->word == "weigh";
    });
  }

  // ---- what is lost
  void lose_stated(const Step& step, Point& made) {
    double left = made.grams;
    for (std::size_t i = 0; i < step.losses.size(); ++i) {
      const double grams = masses_->lost[first_loss_[idx(step.index)] + i];
      if (!known(grams) || !known(left) || grams <= 0 || left <= 0) continue;
      lose_one(step, step.losses[i].node, i, std::min(1.0, grams / left), made);
      left -= grams;
    }
  }

  void lose_one(const Step& step, Node node, std::size_t number, double share, Point& made) {
    if (node == step.node) {
      const bool removes = document_.find(step.node, At::removes) != fiche::none &&
                           (number == 0 || step.losses[number - 1].node != step.node);
      if (removes) return take_out(step, share, made);
      if (document_.find(step.node, At::reduce_to) != fiche::none) made.matter.off = 0;
      return boil_off(step, share, made);
    }
    const std::string_view what = document_.get(node, At::what);
    if (what == "cooking" && !drips(step, made)) return boil_off(step, share, made);
    if (what == "cooking" || what == "straining") {
      take_unknown(made.matter, share);
      made.why_shares = {what == "cooking" ? Reason::juice : Reason::sieve, -1, step.index};
      out_.apart[idx(step.index)] = true;
    }
  }

  [[nodiscard]] bool drips(const Step& step, const Point& made) const {
    const unsigned flesh = (1U << static_cast<unsigned>(food::Role::meat)) | (1U << static_cast<unsigned>(food::Role::fish));
    const auto& actions = doing_[idx(step.index)].actions;
    return (made.roles & flesh) != 0 || std::any_of(actions.begin(), actions.end(), [](const Action* action) {
             return action->rest == Action::Rest::drips || action->rest == Action::Rest::fat;
           });
  }

  void boil_off(const Step& step, double share, Point& made) {
    if (take_off(made.matter, share)) return;
    made.matter = unknown_matter();
    made.why_shares = {Reason::too_much_lost, -1, step.index};
  }

  /// What is taken out again has soaked up and given off.
  void take_out(const Step& step, double share, Point& made) {
    take_unknown(made.matter, share);
    made.why_shares = {Reason::removed, -1, step.index};
    double* row = &row_[idx(step.index) * lines_];
    std::string_view ids = document_.get(step.node, At::removes);
    for (std::size_t at = 0; at < ids.size();) {
      const std::size_t end = std::min(ids.find(' ', at), ids.size());
      const int thing = flow_.thing_named(ids.substr(at, end - at));
      at = end + 1;
      if (thing >= 0 && out_.line_of[idx(thing)] >= 0) row[out_.line_of[idx(thing)]] = 0;
    }
    for (std::size_t i = 0; i < lines_; ++i) row[i] /= 1 - std::min(share, 0.999);
  }

  // ---- what is done
  void act(const Step& step, const Bath& bath, Point& made) {
    const Doing& doing = doing_[idx(step.index)];
    if (!doing.unknown.empty()) return forget(made, {Reason::action_unknown, -1, step.index});
    if (doing.nothing) return forget(made, {Reason::no_action, -1, step.index});
    const bool stated = !step.losses.empty() || divides(step);
    lose_unsaid(made, doing, bath, pieces_in(step), stated, step.index);
    const bool heated = std::any_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) { return action->heats(); });
    if (heated) made.matter[Constituent::alcohol].low = 0;  // how much of it goes is not known
  }

  [[nodiscard]] double pieces_in(const Step& step) const {
    if (out_.apart[idx(step.index)]) return 1;
    double share = 0;
    const double* row = &row_[idx(step.index) * lines_];
    for (std::size_t i = 0; i < flow_.things.size(); ++i) {
      if (out_.line_of[i] >= 0 && is_in_pieces(start_[i].roles)) share += row[out_.line_of[i]];
    }
    return share;
  }

  // ---- what comes of it
  void give(const Step& step, Point& made) {
    for (const int thing : step.gives) points_[idx(thing)] = made;
    if (step.gives.size() > 1) {
      for (const int thing : step.gives) divide(step, thing);
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

  void divide(const Step& step, int thing) {
    Point& point = points_[idx(thing)];
    point.grams = masses_->things[idx(thing)];
    const Why why{Reason::divided, thing, step.index};
    point.why_grams = why;
    if (!divides(step)) return;
    point.matter = unknown_matter();
    point.why_shares = why;
  }

  /// What a yield says of cooking is what its component loses in all.
  void lose_in_yield(const Step& step, Point& point, double before) {
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

  const fiche::Fiche& fiche_;
  const Flow& flow_;
  const fiche::Document& document_;
  States out_;
  std::vector<Point> start_;
  std::vector<Doing> doing_;
  std::vector<std::size_t> first_loss_;
  std::size_t lines_ = 0;
  // of the way at hand
  const Masses* masses_ = nullptr;
  bool first_ = false;
  std::vector<Point> points_, in_, after_;
  std::vector<double> row_;
  std::vector<Going> goings_;
};

}  // namespace

std::optional<Range> States::held(int step, int thing) const {
  const int line = line_of[idx(thing)];
  if (line < 0 || apart[idx(step)]) return std::nullopt;
  return lines[idx(step) * (lines.size() / steps.size()) + idx(line)];
}

States read_states_within(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library, Chain& chain,
                          const fiche::Fiche* around, fiche::Node around_component) {
  if (fiche.document->root() == fiche::none) return {};
  chain.push_back(fiche.document->source().path());
  std::vector<Point> start;
  Start(fiche, flow, library, chain, around, around_component).read(start);
  chain.pop_back();
  return Walk(fiche, flow).run(std::move(start));
}

States read_states(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library) {
  Chain chain;
  return read_states_within(fiche, flow, library, chain, nullptr, fiche::none);
}

}  // namespace tamis::flow
