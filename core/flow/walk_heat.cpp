#include <algorithm>
#include <array>

#include "core/flow/walk.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Reason = Why::Reason;

constexpr double melted_from_c = 28;
constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

}  // namespace

bool Walk::poaches(const Doing& doing) {
  const auto has = [&](Action::Heat heat) {
    return std::any_of(doing.actions.begin(), doing.actions.end(), [heat](const Action* action) { return action->heat == heat; });
  };
  return has(Action::Heat::poaches) && !has(Action::Heat::boils);
}

void Walk::warm_up(const Step& step, int number, Point& point) {
  const Use& use = flow_.uses[idx(number)];
  const int maker = flow_.things[idx(use.thing)].maker;
  if (use.how != Use::How::carried && maker >= 0 && maker != step.index) let_stand(flow_.steps[idx(maker)], step, point);
  const GoingIn& said = going_in_[idx(number)];
  if (!said.celsius) return;
  const bool exact = said.figure && !std::isinf(said.celsius->low) && !std::isinf(said.celsius->high);
  point.celsius = exact ? *said.celsius : narrowed(point.celsius, *said.celsius);
  if (exact) point.why_celsius = {};
  if (point.celsius.low >= melted_from_c) point.solid = false;
}

void Walk::let_stand(const Step& maker, const Step& step, Point& point) {
  const bool another_day = day_of(step) != day_of(maker);
  if (point.stored || (!another_day && maker.index == step.index - 1 && maker.component == step.component)) return;
  if (!another_day && only_minutes_between(maker, step)) {
    point.celsius = drifted(point.celsius, places_.room());
    return;
  }
  Range around = places_.room();
  if (another_day) {
    around = hull_of(around, places_.fridge());
    point.celsius = {std::min(point.celsius.low, around.high), std::min(point.celsius.high, around.high)};
  }
  point.celsius = toward(point.celsius, around);
  point.why_celsius = {Reason::waited, -1, step.index};
}

bool Walk::only_minutes_between(const Step& maker, const Step& step) const {
  for (int i = maker.index + 1; i < step.index; ++i) {
    const Step& other = flow_.steps[idx(i)];
    const auto& actions = doing_[idx(i)].actions;
    const bool waits = std::any_of(actions.begin(), actions.end(), [](const Action* action) {
      return action->cools() || action->heat == Action::Heat::bakes || action->heat == Action::Heat::holds || action->heat == Action::Heat::thaws;
    });
    if (other.component != step.component || waits || document_.find(other.node, At::unattended) != fiche::none) return false;
  }
  return maker.component == step.component && maker.index < step.index;
}

std::string_view Walk::day_of(const Step& step) const {
  const std::string_view day = document_.get(step.node, At::day);
  return day.empty() ? document_.get(step.component, At::day) : day;
}

void Walk::meet(const Step& step, Point& made, const Bath& bath, bool left_out) {
  const StepSays& says = says_[idx(step.index)];
  std::vector<Going> first, later;
  for (const Going& going : goings_) {
    const bool behind = says.food && is_behind(step, going, says.food_mark);
    (behind ? later : first).push_back(going);
  }
  if (first.empty()) first.swap(later);
  Point base = mix(first, step.index);
  heat_up(step, first, base, bath, left_out);
  if (later.empty()) {
    take_heat(made, base);
    return;
  }
  std::vector<Going> all{{&base, base.grams, -1}};
  all.insert(all.end(), later.begin(), later.end());
  Point whole = mix(all, step.index);
  blend(step, all, whole);
  if (says.heats_after) {
    whole.celsius.high = std::max(whole.celsius.high, hottest_inside(made, places_));
    whole.why_celsius = {Reason::heated, -1, step.index};
  }
  take_heat(made, whole);
}

void Walk::take_heat(Point& made, const Point& from) {
  made.celsius = from.celsius;
  made.why_celsius = from.why_celsius;
  made.heat = from.heat;
  made.solid = from.solid;
  made.stored = from.stored;
}

bool Walk::is_behind(const Step& step, const Going& going, Node mark) const {
  for (const int use : step.takes) {
    const Use& taken = flow_.uses[idx(use)];
    if (&in_[idx(use)] == going.point) return taken.mark != fiche::none && taken.mark > mark;
  }
  return false;
}

void Walk::blend(const Step& step, const std::vector<Going>& goings, Point& made) {
  const MixedHeat mixed = mix_celsius(goings);
  made.celsius = mixed.celsius;
  made.solid = mixed.solid;
  const Going* widest = nullptr;
  const auto openness = [](const Going& going) { return going.grams * (going.point->celsius.high - going.point->celsius.low); };
  for (const Going& going : goings) {
    if (!going.point->why_celsius.any()) continue;
    if (widest == nullptr || openness(going) > openness(*widest)) widest = &going;
  }
  made.why_celsius = widest == nullptr ? Why{} : widest->point->why_celsius;
  if (mixed.melting_k > 5 && !made.why_celsius.any()) made.why_celsius = {Reason::solid, -1, step.index};
  if (goings.size() == 1) made.stored = goings.front().point->stored;
}

void Walk::heat_up(const Step& step, const std::vector<Going>& goings, Point& base, const Bath& bath, bool left_out) {
  if (goings.empty()) return;
  blend(step, goings, base);
  const Doing& doing = doing_[idx(step.index)];
  if (left_out || !doing.unknown.empty()) return;
  const double pieces = pieces_in(step);
  warm(base, {doing, says_[idx(step.index)], places_, document_.get(step.node, At::on), bath, pieces,
              seconds_[idx(step.index)], goings.size(), step.index});
}

void Walk::settle_in(const Step& step, Point& made) {
  const StepSays& says = says_[idx(step.index)];
  if (goings_.size() == 1 && !moves(doing_[idx(step.index)])) {
    const Point& before = *goings_.front().point;
    made.depth_mm = before.depth_mm;
    made.depth = before.depth;
    made.vessel = before.vessel;
  }
  if (says.vessel != fiche::none) {
    made.vessel = says.vessel;
    const fiche::Statement* fill = fiche_.statement(says.vessel, At::fill);
    const bool one = fill != nullptr && fill->lengths.size() == 1 && fill->lengths.front().has_figure();
    made.depth_mm = one ? std::optional(fill->lengths.front().middle_base().approximate()) : std::nullopt;
    made.depth = one ? says.vessel : fiche::none;
  }
  if (says.depth_mm) {
    made.depth_mm = says.depth_mm;
    made.depth = says.depth;
  }
}

bool Walk::moves(const Doing& doing) {
  static constexpr std::array<std::string_view, 15> words{"pour", "fill",  "pipe",     "unmould", "portion", "divide", "cut", "spread",
                                                   "roll", "shape", "assemble", "strain",  "scoop",   "mix",    "fold"};
  return std::any_of(doing.actions.begin(), doing.actions.end(), [](const Action* action) {
    return std::find(words.begin(), words.end(), action->word) != words.end();
  });
}

}  // namespace tamis::flow
