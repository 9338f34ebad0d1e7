#include "core/flow/timetable.h"

#include <algorithm>

#include "core/flow/actions.h"
#include "core/flow/step_times.h"

namespace tamis::flow {
namespace {

using Seconds = TimeNetwork::Seconds;

constexpr Seconds minute = 60;
constexpr Seconds a_day = 24 * 3600;
constexpr Seconds most_days_more = 7;

Seconds to_minute(Seconds time) { return (time + minute - 1) / minute * minute; }
Seconds middle(const TimeRange& range) { return to_minute(range.most ? (range.least + *range.most) / 2 : range.least); }

/// The midnight before a time, which may lie before the midnight counted from.
Seconds midnight_before(Seconds time) { return (time >= 0 ? time / a_day : -((-time + a_day - 1) / a_day)) * a_day; }

bool cools_or_keeps(const std::vector<std::string_view>& actions) {
  using Heat = Action::Heat;
  return std::any_of(actions.begin(), actions.end(), [](std::string_view word) {
    const Action* action = action_named(word);
    if (action == nullptr) return false;
    return action->heat == Heat::holds || (action->heat >= Heat::cools && action->heat <= Heat::freezes);
  });
}

class Layer {
 public:
  Layer(const fiche::Fiche& fiche, const Flow& flow, Seconds service)
      : fiche_(fiche), flow_(flow), times_(read_step_times(fiche, flow)), hours_(working_hours(*fiche.kitchen)), service_(service) {}

  Timetable lay() {
    int last = 1;
    for (const std::optional<int>& day : times_.days) last = std::max(last, day.value_or(1));
    for (Seconds more = 0; more <= most_days_more; ++more) {
      service_day_ = (last - 1 + more) * a_day;
      if (!try_to_fit(false) && !try_to_fit(true)) continue;
      keep_hours();
      begin_at_once();
      return table();
    }
    return {false, {}};
  }

 private:
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  [[nodiscard]] int count() const { return static_cast<int>(flow_.steps.size()); }
  /// Of what is done several times all turns.
  [[nodiscard]] Seconds length(int step) const {
    const StepLength& stated = times_.lengths[at(step)];
    if (!stated.stated) return 0;
    const bool several = fiche_.statement(flow_.steps[at(step)].node, fiche::At::repeat) != nullptr;
    return several && stated.whole.most ? to_minute(*stated.whole.most) : middle(stated.whole);
  }
  /// How long somebody is at it, from its start; empty where it goes on by itself. A time in the sentence alone is work,
  /// unless what is done is chilling, resting and the like.
  [[nodiscard]] std::optional<Seconds> hands(int step) const {
    const StepLength& stated = times_.lengths[at(step)];
    if (stated.hands) return std::min(middle(*stated.hands), length(step));
    if (stated.unattended || goes_on_by_itself(fiche_.steps[at(step)].actions)) return std::nullopt;
    return length(step);
  }

  /// The middle; what goes on by itself may take longer within what is stated, and where nothing else fits all take less.
  void set_length(TimeNetwork::Constraint& one, int step) const {
    const TimeRange& whole = times_.lengths[at(step)].whole;
    one.least = one.most = length(step);
    if (!times_.lengths[at(step)].stated) return;
    if (shorter_ || !hands(step)) one.most = whole.most;
    if (shorter_) one.least = std::min(whole.least, length(step));
  }

  bool try_to_fit(bool shorter) {
    shorter_ = shorter;
    limits_.assign(flow_.steps.size(), service_day_ + service_);
    held_.assign(flow_.steps.size(), false);
    return solve();
  }

  /// The latest times at which all limits are kept: all of them at once keep them too (Dechter, Meiri, Pearl).
  bool solve() {
    TimeNetwork network(times_.network.events());
    const auto& constraints = times_.network.constraints();
    for (std::size_t i = 0; i < constraints.size(); ++i) {
      TimeNetwork::Constraint one = constraints[i];
      if (times_.reasons[i].kind == TimeReason::Kind::length) set_length(one, times_.reasons[i].step);
      network.add(one);
    }
    for (int step = 0; step < count(); ++step) {
      network.add({StepTimes::origin, StepTimes::end(step), {}, service_day_ + service_});
      network.add({StepTimes::origin, StepTimes::start(step), {}, limits_[at(step)]});
    }
    for (int step = 0; step < count(); ++step)
      if (held_[at(step)]) network.add({StepTimes::origin, StepTimes::start(step), starts_[at(step)], starts_[at(step)]});
    const TimeNetwork::Solution solution = network.solve();
    if (!solution.consistent) return false;
    windows_ = network.windows_from(StepTimes::origin, solution);
    starts_.clear();
    for (int step = 0; step < count(); ++step)
      starts_.push_back(windows_[at(StepTimes::start(step))].most.value_or(service_day_ + service_));
    return true;
  }

  /// What cools and keeps begins when what it waits for is done: nothing stands about hot before it is chilled.
  void begin_at_once() {
    for (int step = 0; step < count(); ++step) {
      const bool cools = !hands(step) && cools_or_keeps(fiche_.steps[at(step)].actions);
      held_[at(step)] = !cools || flow_.steps[at(step)].waits_for.empty();
    }
    if (!solve()) return held_.assign(flow_.steps.size(), false);
    for (const int step : flow_.order) {
      const auto earliest = windows_[at(StepTimes::start(step))].least;
      if (held_[at(step)] || !earliest) continue;
      const std::vector<Seconds> before = starts_;
      held_[at(step)] = true;
      starts_[at(step)] = *earliest;
      if (solve()) continue;
      starts_ = before;
      solve();
    }
  }

  /// By when the step must begin so that its hands-on part lies within the hours of the day it falls on, or of the one
  /// before; its start where it does already. On the day of service somebody is there until then.
  [[nodiscard]] Seconds within_hours(int step) const {
    const Seconds start = starts_[at(step)];
    const Seconds midnight = midnight_before(start);
    const Seconds closes = midnight == service_day_ ? std::max(hours_.until, service_) : hours_.until;
    const Seconds open = hours_.until - hours_.from;
    const auto work = hands(step);
    if (!work || *work > open) return start;
    if (start < midnight + hours_.from) return midnight - a_day + hours_.until - *work;
    return std::min(start, midnight + closes - *work);
  }

  /// Moves what falls into the night to the day before, from service backwards.
  void keep_hours() {
    fixed_.assign(flow_.steps.size(), false);
    const int most = 8 * count();
    for (int turn = 0; turn < most; ++turn) {
      int latest = -1;
      for (int step = 0; step < count(); ++step) {
        if (fixed_[at(step)] || within_hours(step) == starts_[at(step)]) continue;
        if (latest < 0 || starts_[at(step)] > starts_[at(latest)]) latest = step;
      }
      if (latest < 0) return;
      const std::vector<Seconds> before = starts_;
      const Seconds limit = limits_[at(latest)];
      limits_[at(latest)] = within_hours(latest);
      if (solve()) continue;
      starts_ = before;
      limits_[at(latest)] = limit;
      fixed_[at(latest)] = true;
    }
  }

  Timetable table() const {
    Timetable out;
    for (const int step : in_order()) {
      const Seconds start = starts_[at(step)] - service_day_;
      out.steps.push_back({step, start, end_of(step) - service_day_, times_.lengths[at(step)].stated, within_hours(step) != starts_[at(step)]});
    }
    std::stable_sort(out.steps.begin(), out.steps.end(), [](const auto& a, const auto& b) { return a.start < b.start; });
    return out;
  }

  /// As soon as it can be over, its start given: a night is over in the morning.
  [[nodiscard]] Seconds end_of(int step) const {
    const auto earliest = windows_[at(StepTimes::end(step))].least;
    return held_[at(step)] && earliest ? *earliest : starts_[at(step)] + length(step);
  }

  /// Those that the flow has put in order, then those on a circle.
  [[nodiscard]] std::vector<int> in_order() const {
    std::vector<int> out = flow_.order;
    for (int step = 0; step < count(); ++step)
      if (std::find(flow_.order.begin(), flow_.order.end(), step) == flow_.order.end()) out.push_back(step);
    return out;
  }

  const fiche::Fiche& fiche_;
  const Flow& flow_;
  const StepTimes times_;
  const WorkingHours hours_;
  const Seconds service_;
  bool shorter_ = false;          // stated ranges may be cut to their least
  Seconds service_day_ = 0;       // from the midnight before day 1
  std::vector<Seconds> limits_;   // by when each step must begin
  std::vector<Seconds> starts_;
  std::vector<bool> held_;        // begins when starts_ says
  std::vector<TimeNetwork::Window> windows_;
  std::vector<bool> fixed_;       // could not be moved into the hours
};

}  // namespace

Timetable lay_backwards(const fiche::Fiche& fiche, const Flow& flow, Seconds service) { return Layer(fiche, flow, service).lay(); }

}  // namespace tamis::flow
