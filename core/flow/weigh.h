#ifndef CORE_FLOW_WEIGH_H
#define CORE_FLOW_WEIGH_H

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include "core/flow/amounts.h"
#include "core/flow/work.h"

namespace tamis::flow {

/// One way through the recipe that is weighed: which ends of the amounts, which variant.
struct Way {
  bool most = false;
  int variant = 0;
};

/// Widens a range to hold a figure; one unknown figure makes the range unknown for good.
class Hull {
 public:
  void add(double grams) {
    if (std::isnan(grams)) unknown_ = true;
    if (unknown_) return;
    range_ = range_ ? Grams{std::min(range_->low, grams), std::max(range_->high, grams)} : Grams{grams, grams};
  }
  [[nodiscard]] std::optional<Grams> range() const { return unknown_ ? std::nullopt : range_; }

 private:
  bool unknown_ = false;
  std::optional<Grams> range_;
};

/// Grams of everything on every way through a recipe, and their hull: the work of weigh(). Ways and totals are in weigh.cpp,
/// shares of a thing in weigh_shares.cpp, a step and what it loses in weigh_step.cpp.
class Weigh {
 public:
  Weigh(Work& work, const std::vector<std::optional<Grams>>& outside)
      : work_(work), flow_(work.flow), lines_(Amounts(work).read()), outside_(outside) {}
  void run();

 private:
  static constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
  static constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }
  static bool known(double grams) { return !std::isnan(grams); }

  // ---- before
  /// Variants as totals; how many the component with the most of them has.
  int list_variants();
  void prepare();
  void list_losses(Step& step);

  // ---- one way
  void walk(Way way);
  /// Losses were met in the order of the work; they are kept in that of the steps.
  void keep_way();
  [[nodiscard]] double end_of(const Grams& grams) const { return way_.most ? grams.high : grams.low; }
  [[nodiscard]] bool of_this_variant(const Thing& thing) const;
  [[nodiscard]] int variants_in(fiche::Node component) const;
  double stated_mass(int index);
  [[nodiscard]] double outside_mass(fiche::Node component) const;
  /// Nothing is done to what they hold: they are what goes in.
  void components_without_steps();
  void set_component(fiche::Node node, double mass);
  /// Of a thing whose mass rests on what the steps make, once they have made it.
  double mass_of(int index);

  // ---- shares of a thing
  /// Whether the taking happens on this way through the recipe.
  [[nodiscard]] bool happens(const Use& use) const;
  /// What an optional step makes stands in for what it was made of, when all is done.
  [[nodiscard]] bool stands_in(const Use& use) const;
  [[nodiscard]] bool stood_in_for(const Use& use) const;
  /// Both happen in one making: not on two branches, not what is done only if need be while nothing is.
  [[nodiscard]] bool together(const Use& a, const Use& b) const;
  [[nodiscard]] double stated_take(const Use& use, double whole) const;
  /// Gives every use of a thing its grams, once its mass is known or known to be unknown.
  void spread(int index);
  /// What the others leave: by "the rest" first, else to the last taker on the least way and the first on the most.
  [[nodiscard]] double left_for(int number, const std::vector<int>& uses, double whole) const;

  // ---- a step
  void work_out(int index);
  double sum_in(const Step& step);
  /// The maker of a divided result, when the step takes everything that was divided there.
  [[nodiscard]] int all_comes_together(const Step& step, const Use& use) const;
  [[nodiscard]] bool takes_all(const Step& step, const std::vector<int>& things) const;
  /// Whether a thing is one of those, or a result that one of them went into.
  [[nodiscard]] bool holds_one_of(int thing, const std::vector<int>& wanted, std::size_t depth = 0) const;
  /// The step takes all that is filled up to the line's total, or what came of it.
  [[nodiscard]] bool fills_up(const Step& step, const Line& line) const;
  /// Part of a total to which another ingredient of the step fills it up.
  [[nodiscard]] bool filled_up_in(const Step& step, int thing) const;
  /// What fills up is what is missing to the total when it goes in: the wine may have boiled down by then.
  void fill_up(const Step& step, int number);

  // ---- losses
  double no_losses(const Step& step);
  double losses(const Step& step, double in);
  /// "Boil the wine with the shallots down by half": of all of it on the least way, of the wine on the most.
  [[nodiscard]] double heaviest_in(const Step& step) const;
  double removed(const Step& step);

  // ---- totals
  void total_up();
  void hand_over();

  Work& work_;
  Flow& flow_;
  const std::vector<Line> lines_;
  const std::vector<std::optional<Grams>>& outside_;
  std::vector<std::pair<fiche::Node, int>> variant_of_;  // component and number of each of Flow::variants
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

}  // namespace tamis::flow

#endif
