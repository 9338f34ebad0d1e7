#include <algorithm>
#include <cmath>
#include <limits>

#include "core/flow/amounts.h"
#include "core/flow/losses.h"
#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }
bool known(double grams) { return !std::isnan(grams); }

/// One way through the recipe: which ends of the amounts, which variant.
struct Way {
  bool most = false;
  int variant = 0;
};

/// Widens a range to hold a figure; one unknown figure makes the range unknown for good.
class Hull {
 public:
  void add(double grams) {
    if (!known(grams)) unknown_ = true;
    if (unknown_) return;
    range_ = range_ ? Grams{std::min(range_->low, grams), std::max(range_->high, grams)} : Grams{grams, grams};
  }
  [[nodiscard]] std::optional<Grams> range() const { return unknown_ ? std::nullopt : range_; }

 private:
  bool unknown_ = false;
  std::optional<Grams> range_;
};

class Weigh {
 public:
  Weigh(Work& work, const std::vector<std::optional<Grams>>& outside)
      : work_(work), flow_(work.flow), lines_(Amounts(work).read()), outside_(outside) {}

  void run() {
    for (std::size_t i = 0; i < flow_.things.size(); ++i) flow_.things[i].trace = lines_[i].trace;
    const int variants = list_variants();
    prepare();
    for (int variant = 0; variant < std::max(1, variants); ++variant) {
      for (const bool most : {false, true}) walk({most, variant});
    }
    hand_over();
  }

 private:
  // ---- before
  /// Variants as totals; how many the component with the most of them has.
  int list_variants() {
    int most = 0;
    for (const Total& total : flow_.components) {
      int here = 0;
      for (Node c = work_.document.first_child(total.node); c != fiche::none; c = work_.document.next(c)) {
        if (work_.document.el(c) != El::variant) continue;
        flow_.variants.push_back({c, std::nullopt, total.marked, total.taken});
        variant_of_.emplace_back(total.node, here++);
      }
      most = std::max(most, here);
    }
    return most;
  }

  void prepare() {
    thing_.resize(flow_.things.size());
    spread_.resize(flow_.things.size());
    use_.resize(flow_.uses.size());
    in_.resize(flow_.steps.size());
    out_.resize(flow_.steps.size());
    thing_hull_.resize(flow_.things.size());
    use_hull_.resize(flow_.uses.size());
    in_hull_.resize(flow_.steps.size());
    out_hull_.resize(flow_.steps.size());
    component_hull_.resize(flow_.components.size());
    variant_hull_.resize(flow_.variants.size());
    component_.resize(flow_.components.size());
    loss_hull_.resize(flow_.steps.size());
    for (std::size_t i = 0; i < flow_.steps.size(); ++i) list_losses(flow_.steps[i]);
  }

  void list_losses(Step& step) {
    for (Node c = work_.document.first_child(step.node); c != fiche::none; c = work_.document.next(c)) {
      if (work_.document.el(c) == El::loss) step.losses.push_back({c, std::nullopt});
    }
    for (const At at : {At::removes, At::reduce_by, At::reduce_to}) {
      if (work_.document.find(step.node, at) != fiche::none) step.losses.push_back({step.node, std::nullopt});
    }
    loss_hull_[idx(step.index)].resize(step.losses.size());
  }

  // ---- one way
  void walk(Way way) {
    way_ = way;
    std::fill(spread_.begin(), spread_.end(), false);
    std::fill(use_.begin(), use_.end(), unknown);
    std::fill(in_.begin(), in_.end(), unknown);
    std::fill(out_.begin(), out_.end(), unknown);
    std::fill(component_.begin(), component_.end(), unknown);
    for (std::size_t i = 0; i < thing_.size(); ++i) thing_[i] = stated_mass(static_cast<int>(i));
    components_without_steps();
    lost_.clear();
    for (const int step : flow_.order) work_out(step);
    for (std::size_t i = 0; i < thing_.size(); ++i) thing_hull_[i].add(thing_[i]);
    for (std::size_t i = 0; i < use_.size(); ++i) use_hull_[i].add(use_[i]);
    for (std::size_t i = 0; i < in_.size(); ++i) {
      in_hull_[i].add(in_[i]);
      out_hull_[i].add(out_[i]);
    }
    total_up();
    keep_way();
  }

  /// Losses were met in the order of the work; they are kept in that of the steps.
  void keep_way() {
    Masses& kept = flow_.ways.emplace_back(Masses{way_.most, way_.variant, thing_, use_, in_, out_, {}});
    std::size_t all = 0;
    std::vector<std::size_t> first(flow_.steps.size());
    for (std::size_t i = 0; i < flow_.steps.size(); ++i) {
      first[i] = all;
      all += flow_.steps[i].losses.size();
    }
    kept.lost.assign(all, unknown);
    for (const auto& [step, number, grams] : lost_) kept.lost[first[idx(step)] + number] = grams;
  }

  double end_of(const Grams& grams) const { return way_.most ? grams.high : grams.low; }

  [[nodiscard]] bool of_this_variant(const Thing& thing) const {
    return thing.variant < 0 || thing.variant == std::min(way_.variant, variants_in(thing.component) - 1);
  }
  [[nodiscard]] int variants_in(Node component) const {
    int count = 0;
    for (const auto& [node, number] : variant_of_) count += node == component ? 1 : 0;
    return count;
  }

  double stated_mass(int index) {
    const Line& line = lines_[idx(index)];
    if (line.grams) return end_of(*line.grams);
    if (line.trace) return 0;
    const Thing& thing = flow_.things[idx(index)];
    if (thing.kind == Thing::Kind::result && thing.maker < 0) return outside_mass(thing.component);
    return unknown;
  }

  double outside_mass(Node component) const {
    for (std::size_t i = 0; i < flow_.components.size(); ++i) {
      if (flow_.components[i].node == component && i < outside_.size() && outside_[i]) return end_of(*outside_[i]);
    }
    return unknown;
  }

  /// Nothing is done to what they hold: they are what goes in.
  void components_without_steps() {
    for (std::size_t i = 0; i < flow_.things.size(); ++i) {
      const Thing& thing = flow_.things[i];
      if (thing.kind != Thing::Kind::component || thing.maker >= 0) continue;
      double mass = 0;
      if (!work_.document.get(thing.node, At::from).empty()) {
        mass = outside_mass(thing.node);
      } else {
        for (std::size_t j = 0; j < flow_.things.size(); ++j) {
          const Thing& other = flow_.things[j];
          if (other.kind != Thing::Kind::ingredient || other.component != thing.node || !other.counts) continue;
          if (other.second_choice || !of_this_variant(other) || (other.optional && !way_.most)) continue;
          mass += mass_of(static_cast<int>(j));
        }
      }
      set_component(thing.node, mass);
    }
  }

  void set_component(Node node, double mass) {
    mass = after_yield_losses(work_, node, mass, way_.most);
    for (std::size_t i = 0; i < flow_.components.size(); ++i) {
      if (flow_.components[i].node == node) component_[i] = mass;
    }
    if (const int thing = flow_.thing_of(node); thing >= 0) thing_[idx(thing)] = mass;
  }

  /// Of a thing whose mass rests on what the steps make, once they have made it.
  double mass_of(int index) {
    double& mass = thing_[idx(index)];
    const Line& line = lines_[idx(index)];
    if (known(mass)) return mass;
    if (line.follows >= 0) mass = line.times * thing_[idx(line.follows)];
    if (line.total) {
      double rest = end_of(*line.total);
      for (const int other : line.tops_up) rest -= mass_of(other);
      if (known(rest)) mass = std::max(0.0, rest);
    }
    const Thing& thing = flow_.things[idx(index)];
    if (!known(mass) && thing.returns >= 0 && !work_.fiche.statement(thing.node)) mass = thing_[idx(thing.returns)];
    return mass;
  }

  // ---- shares of a thing
  /// Whether the taking happens on this way through the recipe.
  [[nodiscard]] bool happens(const Use& use) const {
    const Thing& thing = flow_.things[idx(use.thing)];
    if (!thing.counts || !of_this_variant(thing)) return false;
    if (!way_.most && thing.optional) return false;
    if (!way_.most && flow_.steps[idx(use.step)].optional && thing.kind != Thing::Kind::result) return false;
    return use.instead ? stands_in(use) : !stood_in_for(use);
  }
  /// What an optional step makes stands in for what it was made of, when all is done.
  [[nodiscard]] bool stands_in(const Use& use) const {
    const int maker = flow_.things[idx(use.thing)].maker;
    return way_.most && maker >= 0 && flow_.steps[idx(maker)].optional;
  }
  [[nodiscard]] bool stood_in_for(const Use& use) const {
    if (use.mark == fiche::none || !way_.most) return false;
    const std::vector<int>& takes = flow_.steps[idx(use.step)].takes;
    return std::any_of(takes.begin(), takes.end(), [&](int index) {
      const Use& other = flow_.uses[idx(index)];
      return &other != &use && other.mark == use.mark && other.instead && stands_in(other);
    });
  }

  /// Both happen in one making: not on two branches, not what is done only if need be while nothing is.
  [[nodiscard]] bool together(const Use& a, const Use& b) const {
    const Step& one = flow_.steps[idx(a.step)];
    const Step& other = flow_.steps[idx(b.step)];
    if (one.optional != other.optional) return false;
    return one.branch.empty() || other.branch.empty() || one.branch == other.branch;
  }

  double stated_take(const Use& use, double whole) const {
    if (use.take == Use::Take::share) return use.share->approximate() * whole;
    if (use.take != Use::Take::amount) return 0;
    const auto amount = amount_taken(work_, use);
    if (!amount) return unknown;
    const Statement* repeat = work_.fiche.statement(flow_.steps[idx(use.step)].node, At::repeat);
    const double times = way_.most && repeat != nullptr && repeat->amount ? repeat->amount->middle_base().approximate() : 1;
    return times * end_of(*amount);
  }

  /// Gives every use of a thing its grams, once its mass is known or known to be unknown.
  void spread(int index) {
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

  /// What the others leave: by "the rest" first, else to the last taker on the least way and the first on the most.
  double left_for(int number, const std::vector<int>& uses, double whole) const {
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

  // ---- a step
  void work_out(int index) {
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

  double sum_in(const Step& step) {
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

  /// The maker of a divided result, when the step takes everything that was divided there.
  [[nodiscard]] int all_comes_together(const Step& step, const Use& use) const {
    const int maker = flow_.things[idx(use.thing)].maker;
    if (maker < 0 || use.take != Use::Take::all) return -1;
    const std::vector<int>& gives = flow_.steps[idx(maker)].gives;
    return gives.size() > 1 && takes_all(step, gives) ? maker : -1;
  }

  [[nodiscard]] bool takes_all(const Step& step, const std::vector<int>& things) const {
    return std::all_of(things.begin(), things.end(), [&](int thing) {
      return std::any_of(step.takes.begin(), step.takes.end(), [&](int use) {
        return flow_.uses[idx(use)].thing == thing && flow_.uses[idx(use)].take == Use::Take::all;
      });
    });
  }

  /// Whether a thing is one of those, or a result that one of them went into.
  [[nodiscard]] bool holds_one_of(int thing, const std::vector<int>& wanted, std::size_t depth = 0) const {
    if (std::find(wanted.begin(), wanted.end(), thing) != wanted.end()) return true;
    const int maker = flow_.things[idx(thing)].maker;
    if (maker < 0 || depth > flow_.steps.size() || flow_.things[idx(thing)].kind != Thing::Kind::result) return false;
    const std::vector<int>& takes = flow_.steps[idx(maker)].takes;
    return std::any_of(takes.begin(), takes.end(),
                       [&](int use) { return holds_one_of(flow_.uses[idx(use)].thing, wanted, depth + 1); });
  }

  /// The step takes all that is filled up to the line's total, or what came of it.
  [[nodiscard]] bool fills_up(const Step& step, const Line& line) const {
    return line.total && std::all_of(line.tops_up.begin(), line.tops_up.end(), [&](int wanted) {
             return std::any_of(step.takes.begin(), step.takes.end(), [&](int use) {
               return holds_one_of(flow_.uses[idx(use)].thing, {wanted});
             });
           });
  }

  /// Part of a total to which another ingredient of the step fills it up.
  [[nodiscard]] bool filled_up_in(const Step& step, int thing) const {
    return std::any_of(step.takes.begin(), step.takes.end(), [&](int number) {
      const Line& line = lines_[idx(flow_.uses[idx(number)].thing)];
      return fills_up(step, line) && holds_one_of(thing, line.tops_up);
    });
  }

  /// What fills up is what is missing to the total when it goes in: the wine may have boiled down by then.
  void fill_up(const Step& step, int number) {
    const int topper = flow_.uses[idx(number)].thing;
    const Line& line = lines_[idx(topper)];
    if (!fills_up(step, line)) return;
    double missing = end_of(*line.total);
    for (const int other : step.takes) {
      if (other != number && holds_one_of(flow_.uses[idx(other)].thing, line.tops_up)) missing -= use_[idx(other)];
    }
    thing_[idx(topper)] = use_[idx(number)] = known(missing) ? std::max(0.0, missing) : unknown;
  }

  // ---- losses
  double no_losses(const Step& step) {
    for (std::size_t i = 0; i < step.losses.size(); ++i) {
      loss_hull_[idx(step.index)][i].add(0);
      lost_.push_back({step.index, i, 0});
    }
    return 0;
  }

  double losses(const Step& step, double in) {
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

  /// "Boil the wine with the shallots down by half": of all of it on the least way, of the wine on the most.
  [[nodiscard]] double heaviest_in(const Step& step) const {
    double most = 0;
    for (const int use : step.takes) most = std::max(most, known(use_[idx(use)]) ? use_[idx(use)] : 0);
    return most > 0 ? most : unknown;
  }

  double removed(const Step& step) {
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

  // ---- totals
  void total_up() {
    double whole = 0;
    for (std::size_t i = 0; i < flow_.components.size(); ++i) {
      const Total& total = flow_.components[i];
      component_hull_[i].add(component_[i]);
      const int thing = flow_.thing_of(total.node);
      const bool left_out = !way_.most && thing >= 0 && flow_.things[idx(thing)].optional;
      if (!total.taken && !left_out) whole += component_[i];
    }
    if (flow_.components.empty()) whole = unknown;
    whole_hull_.add(after_yield_losses(work_, flow_.whole.node, whole, way_.most));
    for (std::size_t i = 0; i < variant_of_.size(); ++i) {
      const auto& [component, number] = variant_of_[i];
      if (std::min(way_.variant, variants_in(component) - 1) != number) continue;
      for (std::size_t j = 0; j < flow_.components.size(); ++j) {
        if (flow_.components[j].node == component) variant_hull_[i].add(component_[j]);
      }
    }
  }

  void hand_over() {
    for (std::size_t i = 0; i < thing_.size(); ++i) {
      Thing& thing = flow_.things[i];
      thing.grams = lines_[i].grams && thing.variant >= 0 ? lines_[i].grams : thing_hull_[i].range();
      if (thing.trace) thing.grams.reset();
    }
    for (std::size_t i = 0; i < use_.size(); ++i) {
      if (!flow_.things[idx(flow_.uses[i].thing)].trace) flow_.uses[i].grams = use_hull_[i].range();
    }
    for (std::size_t i = 0; i < in_.size(); ++i) {
      Step& step = flow_.steps[i];
      step.in = in_hull_[i].range();
      step.out = out_hull_[i].range();
      for (std::size_t j = 0; j < step.losses.size(); ++j) step.losses[j].grams = loss_hull_[i][j].range();
    }
    for (std::size_t i = 0; i < component_.size(); ++i) flow_.components[i].out = component_hull_[i].range();
    for (std::size_t i = 0; i < variant_hull_.size(); ++i) flow_.variants[i].out = variant_hull_[i].range();
    flow_.whole.out = whole_hull_.range();
  }

  Work& work_;
  Flow& flow_;
  const std::vector<Line> lines_;
  const std::vector<std::optional<Grams>>& outside_;
  std::vector<std::pair<Node, int>> variant_of_;  // component and number of each of Flow::variants
  Way way_;
  struct LostHere {
    int step;
    std::size_t number;
    double grams;
  };
  std::vector<LostHere> lost_;
  std::vector<double> thing_, use_, in_, out_, component_;
  std::vector<bool> spread_;
  std::vector<Hull> thing_hull_, use_hull_, in_hull_, out_hull_, component_hull_, variant_hull_;
  std::vector<std::vector<Hull>> loss_hull_;
  Hull whole_hull_;
};

}  // namespace

void weigh(Work& work, const std::vector<std::optional<Grams>>& outside) { Weigh(work, outside).run(); }

}  // namespace tamis::flow
