#include "core/flow/step_times.h"

#include <algorithm>
#include <map>

#include "core/base/utf8.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Kind = TimeReason::Kind;
using Seconds = TimeNetwork::Seconds;

constexpr Seconds hour = 3600;
constexpr Seconds a_day = 24 * hour;
constexpr Seconds begun = 6 * hour;  // how long a component's day binds the steps that follow

class Reader {
 public:
  Reader(const fiche::Fiche& fiche, const Flow& flow) : fiche_(fiche), flow_(flow), document_(*fiche.document), hours_(working_hours(*fiche.kitchen)) {}

  StepTimes read() {
    const int count = static_cast<int>(flow_.steps.size());
    out_.days.resize(flow_.steps.size());
    out_.network = TimeNetwork(1 + 2 * count);
    in_order_.assign(flow_.steps.size(), 0);
    for (const int step : flow_.order) in_order_[at(step)] = 1;
    for (int step = 0; step < count; ++step) read_own(step);
    for (int step = 0; step < count; ++step) read_waits(step);
    read_days();
    read_keeps();
    return std::move(out_);
  }

 private:
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  Node node(int step) const { return flow_.steps[at(step)].node; }

  void add(TimeReason reason, const TimeNetwork::Constraint& constraint) {
    out_.network.add(constraint);
    out_.reasons.push_back(reason);
  }

  bool may_be_left_out(int step) const {
    for (const At mark : {At::optional, At::when, At::branch, At::batch}) {
      if (document_.find(node(step), mark) != fiche::none) return true;
    }
    const Node component = flow_.steps[at(step)].component;
    return component != fiche::none && document_.find(component, At::optional) != fiche::none;
  }

  void read_own(int step) {
    const std::vector<TimeMark>& marks = out_.marks.emplace_back(time_marks(fiche_, node(step)));
    const StepLength& length = out_.lengths.emplace_back(read_length(fiche_, node(step), marks));
    const Seconds least = may_be_left_out(step) ? 0 : length.whole.least;
    add({Kind::length, node(step), step, -1}, {StepTimes::start(step), StepTimes::end(step), least, length.whole.most});
  }

  std::optional<TimeRange> time(Node n, At attribute) const {
    const fiche::Statement* statement = fiche_.statement(n, attribute);
    return statement == nullptr ? std::nullopt : time_meant(*statement, *fiche_.kitchen);
  }

  void read_waits(int step) {
    const Step& here = flow_.steps[at(step)];
    if (in_order_[at(step)] == 0) return;
    for (const int other : here.waits_for) {
      if (in_order_[at(other)] == 0) continue;
      add({Kind::order, here.node, step, other}, {StepTimes::end(other), StepTimes::start(step), 0, {}});
    }
    for (const int other : named_by_after(step)) read_wait(step, other);
    for (const TimeMark& mark : out_.marks[at(step)]) {
      const int other = goes_on_with(here);
      if (mark.role != TimeMark::Role::limit || other < 0) continue;
      add({Kind::within, mark.statement->node, step, other},
          {StepTimes::end(other), StepTimes::start(step), {}, mark.range.most});
    }
  }

  /// The step that "within 10 min" counts from; -1 where there are several and none is gone on with.
  static int goes_on_with(const Step& step) {
    if (step.before >= 0) return step.before;
    return step.waits_for.size() == 1 ? step.waits_for.front() : -1;
  }

  /// The steps its at-least and at-most count from: those that its after names, else the one it goes on with.
  std::vector<int> named_by_after(int step) const {
    std::vector<int> out;
    const std::string_view after = document_.get(node(step), At::after);
    for (std::size_t from = 0; from < after.size();) {
      const std::size_t end = std::min(after.find_first_of(" \t\n\r", from), after.size());
      const auto named = fiche_.ids.equal_range(after.substr(from, end - from));
      for (auto id = named.first; id != named.second; ++id) {
        const int other = flow_.step_of(id->second);
        const bool known = std::find(out.begin(), out.end(), other) != out.end();
        if (other >= 0 && other != step && !known) out.push_back(other);
      }
      from = end + 1;
    }
    const int other = goes_on_with(flow_.steps[at(step)]);
    if (out.empty() && after.empty() && other >= 0) out.push_back(other);
    return out;
  }

  void read_wait(int step, int other) {
    const auto least = time(node(step), At::at_least);
    const auto most = time(node(step), At::at_most);
    if (!least && !most) return;
    TimeNetwork::Constraint constraint{StepTimes::end(other), StepTimes::start(step), {}, {}};
    if (least) constraint.least = least->least;
    if (most) constraint.most = most->most;
    add({Kind::wait, node(step), step, other}, constraint);
  }

  std::optional<Seconds> day_of(Node n) const {
    const fiche::Statement* statement = fiche_.statement(n, At::day);
    if (statement == nullptr || !statement->amount || !statement->amount->has_figure()) return std::nullopt;
    const Seconds day = statement->amount->low_base().floor();
    if (day < 1 || day > 10000) return std::nullopt;
    return (day - 1) * a_day;
  }

  void read_days() {
    std::map<Node, Seconds> passed;  // by component, in the steps so far
    for (int step = 0; step < static_cast<int>(flow_.steps.size()); ++step) {
      const Node component = flow_.steps[at(step)].component;
      Seconds& so_far = passed[component];
      if (const auto own = day_of(node(step))) {
        read_day(step, node(step), *own, true);
      } else if (const auto components = component == fiche::none ? std::nullopt : day_of(component)) {
        read_day(step, component, *components, so_far <= begun);
      }
      const auto wait = time(node(step), At::at_least);
      so_far = std::min(so_far + out_.lengths[at(step)].whole.least + (wait ? wait->least : 0), TimeNetwork::longest);
    }
  }

  /// `midnight` before the day that `states` gives; `bound` when the step starts on that very day, not on a later one.
  void read_day(int step, Node states, Seconds midnight, bool bound) {
    TimeNetwork::Constraint constraint{StepTimes::origin, StepTimes::start(step), midnight + hours_.from, {}};
    if (bound) constraint.most = midnight + hours_.until;
    add({Kind::day, states, step, -1}, constraint);
    if (!bound) return;
    out_.days[at(step)] = static_cast<int>(midnight / a_day) + 1;
    // How long such work takes is not over with the day where no time is stated.
    if (!out_.lengths[at(step)].stated && !goes_on_by_itself(fiche_.steps[at(step)].actions)) {
      add({Kind::day, states, step, -1}, {StepTimes::origin, StepTimes::end(step), {}, midnight + hours_.until});
    }
    if (const Node night = overnight(step); night != fiche::none && !may_be_left_out(step)) {
      add({Kind::night, night, step, -1}, {StepTimes::origin, StepTimes::end(step), midnight + a_day + hours_.from, {}});
    }
  }

  /// The step, or the mark in its sentence, that says "overnight"; none when it does not, or gives it as a choice.
  Node overnight(int step) const {
    const auto is_night = [](const fiche::Statement* statement) {
      return statement != nullptr && statement->amount && statement->amount->words == "overnight";
    };
    if (is_night(fiche_.statement(node(step), At::unattended))) return node(step);
    for (const TimeMark& mark : out_.marks[at(step)]) {
      if (is_night(mark.statement) && mark.role == TimeMark::Role::length && !mark.one_of_several) return mark.statement->node;
    }
    return fiche::none;
  }

  /// The longest a thing keeps by all that is said of it; empty where something is said that is no time, or where it
  /// may be frozen.
  struct Kept {
    Node node = fiche::none;
    std::optional<Seconds> most;
    bool open = false;
  };

  void read_keep(Node keep, Kept& kept) const {
    const auto lasts = time(keep, At::for_);
    const std::string words = base::lower(std::string(document_.get(keep, At::where)) + " " + document_.all_text(keep));
    const bool freezes = words.find("free") != std::string::npos || words.find("froz") != std::string::npos ||
                         words.find("congel") != std::string::npos || words.find("gefr") != std::string::npos ||
                         words.find("tiefk") != std::string::npos;
    if (!lasts || !lasts->most || freezes) kept.open = true;
    if (!lasts || !lasts->most || (kept.most && *kept.most >= *lasts->most)) return;
    kept.node = keep;
    kept.most = lasts->most;
  }

  void read_keeps() {
    std::map<int, Kept> kept;  // by thing
    for (const fiche::Statement& statement : fiche_.statements) {
      if (statement.at != At::for_ || document_.el(statement.node) != El::keep) continue;
      for (const int thing : things_kept(statement.node)) read_keep(statement.node, kept[thing]);
    }
    for (const auto& [thing, how] : kept) {
      const int maker = flow_.things[at(thing)].maker;
      if (how.open || !how.most || maker < 0) continue;
      for (const int use : flow_.things[at(thing)].uses) {
        const int user = flow_.uses[at(use)].step;
        if (user < 0 || user == maker) continue;
        add({Kind::keep, how.node, user, maker}, {StepTimes::end(maker), StepTimes::start(user), {}, how.most});
      }
    }
  }

  /// What a keep is of: the result it names, else what its component makes, by whatever name that is used.
  std::vector<int> things_kept(Node keep) const {
    std::vector<int> out;
    if (const std::string_view of = document_.get(keep, At::of); !of.empty()) {
      const int thing = flow_.thing_named(of);
      if (thing >= 0) out.push_back(thing);
      return out;
    }
    const int whole = flow_.thing_of(document_.parent(keep));
    if (whole < 0) return out;
    out.push_back(whole);
    const int maker = flow_.things[at(whole)].maker;
    if (maker < 0) return out;
    for (const int given : flow_.steps[at(maker)].gives) {
      if (given != whole) out.push_back(given);
    }
    return out;
  }

  const fiche::Fiche& fiche_;
  const Flow& flow_;
  const fiche::Document& document_;
  const WorkingHours hours_;
  std::vector<char> in_order_;
  StepTimes out_;
};

bool is_limit(const StepTimes& times, TimeNetwork::Side side) {
  return !side.least && times.reasons[static_cast<std::size_t>(side.constraint)].kind != Kind::length;
}

/// Takes away the most of all constraints that one reason states.
void let_go(const TimeReason& reason, const std::vector<TimeReason>& reasons, std::vector<TimeNetwork::Constraint>& constraints) {
  for (std::size_t i = 0; i < reasons.size(); ++i) {
    const TimeReason& other = reasons[i];
    if (other.kind == reason.kind && other.node == reason.node && other.step == reason.step) constraints[i].most.reset();
  }
}

}  // namespace

bool goes_on_by_itself(const std::vector<std::string_view>& actions) {
  static constexpr std::string_view passive[] = {"freeze", "chill",  "rest", "proof",    "prove", "ferment", "cure", "dry", "set",
                                                 "soak",   "infuse", "cool", "marinate", "steep", "mature",  "age",  "hang", "keep", "store"};
  return std::any_of(actions.begin(), actions.end(), [](std::string_view action) {
    return std::find(std::begin(passive), std::end(passive), action) != std::end(passive);
  });
}

std::optional<Seconds> clock_time(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  const auto digit = [&](std::size_t i) { return text[i] - '0'; };
  for (const std::size_t i : {0U, 1U, 3U, 4U}) {
    if (digit(i) < 0 || digit(i) > 9) return std::nullopt;
  }
  return (digit(0) * 10 + digit(1)) * hour + (digit(3) * 10 + digit(4)) * 60;
}

WorkingHours working_hours(const fiche::Kitchen& kitchen) {
  if (kitchen.document == nullptr) return {};
  const fiche::Document& document = *kitchen.document;
  std::optional<WorkingHours> out;
  if (document.root() == fiche::none) return {};
  for (Node c = document.first_child(document.root()); c != fiche::none; c = document.next(c)) {
    if (document.el(c) != El::person) continue;
    const auto from = clock_time(document.get(c, At::from));
    const auto until = clock_time(document.get(c, At::until));
    if (!from || !until || *from >= *until) return {};
    out = out ? WorkingHours{std::min(out->from, *from), std::max(out->until, *until)} : WorkingHours{*from, *until};
  }
  return out.value_or(WorkingHours{});
}

StepTimes read_step_times(const fiche::Fiche& fiche, const Flow& flow) { return Reader(fiche, flow).read(); }

std::vector<TimeConflict> time_conflicts(const StepTimes& times, std::size_t most) {
  std::vector<TimeConflict> out;
  const auto& constraints = times.network.constraints();
  const bool limited = std::any_of(constraints.begin(), constraints.end(), [](const auto& c) { return c.most.has_value(); });
  if (!limited) return out;
  std::vector<TimeNetwork::Constraint> left = constraints;
  while (out.size() < most) {
    TimeNetwork network(times.network.events());
    for (const TimeNetwork::Constraint& constraint : left) network.add(constraint);
    const TimeNetwork::Solution solution = network.solve();
    if (solution.consistent) break;
    out.push_back({solution.cycle});
    const bool any = std::any_of(solution.cycle.begin(), solution.cycle.end(),
                                 [&](TimeNetwork::Side side) { return is_limit(times, side); });
    for (const TimeNetwork::Side side : solution.cycle) {
      if (!any) {
        TimeNetwork::Constraint& constraint = left[static_cast<std::size_t>(side.constraint)];
        (side.least ? constraint.least : constraint.most).reset();
      } else if (is_limit(times, side)) {
        let_go(times.reasons[static_cast<std::size_t>(side.constraint)], times.reasons, left);
      }
    }
  }
  return out;
}

}  // namespace tamis::flow
