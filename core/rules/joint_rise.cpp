#include "core/rules/joint_rise.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/flow/around.h"
#include "core/physics/roast.h"
#include "core/rules/figure_text.h"
#include "core/rules/gate_steps.h"
#include "core/rules/heated.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using physics::Air;

constexpr double least_grams = 700;                  // below, nobody knows whether it is flat or round
constexpr double roll = 2;                           // as long as thick (common practice)
constexpr double from_the_fridge = 5;                // °C, where nothing is said; it hardly matters
constexpr physics::Material meat{1060, 3500, 0.48};  // lean meat by Choi and Okos at 40 °C
constexpr physics::Range any_oven{12, 24, 45}, moving_in_any{4, 16, 33};  // deck to fan (core/physics/media.inc)

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// One stage in the oven; empty where the step names none.
struct Stage {
  double celsius = 0, seconds = 0;
  physics::Range coefficient, moving;
};

class Joint {
 public:
  Joint(const Check& check, int roast) : check_(check), roast_(roast) {}

  std::optional<JointRise> rise(double pull) {
    if (!find_piece() || !find_stages()) return std::nullopt;
    const physics::Range room = physics::medium_named("still-air")->coefficient;
    const physics::Range draught = physics::medium_named("still-air")->moving;
    JointRise out{1e9, 0, {}};
    // What little and what much it may rise by: wet in moving air, dry and wrapped.
    for (const bool quick : {false, true}) {
      for (const double wetness : {physics::wettest, physics::driest}) {
        std::vector<Air> oven;
        for (const Stage& stage : stages_)
          oven.push_back({stage.celsius, quick ? stage.coefficient.high : stage.coefficient.low,
                          quick ? stage.moving.high : stage.moving.low, stage.seconds});
        const bool wet = wetness == physics::wettest;
        const Air rest{21, wet ? room.high : room.low, wet ? draught.high : draught.low};
        const auto one = physics::roast_and_rest({form_, meat, from_, wetness}, oven, pull, rest);
        if (!one) return std::nullopt;
        out.low = std::min(out.low, one->rise);
        out.high = std::max(out.high, one->rise);
      }
    }
    out.of = figure_text(grams_, measure::Kind::mass) + " out of an oven of " + degrees(stages_.back().celsius);
    return out;
  }

 private:
  /// The only meat that what the step takes was made from.
  bool find_piece() {
    std::vector<int> open{roast_}, seen;
    while (!open.empty()) {
      const int step = open.back();
      open.pop_back();
      if (std::find(seen.begin(), seen.end(), step) != seen.end()) continue;
      seen.push_back(step);
      for (const int use : check_.flow.steps[at(step)].takes) {
        const flow::Thing& thing = check_.flow.things[at(check_.flow.uses[at(use)].thing)];
        if (thing.maker >= 0) open.push_back(thing.maker);
        if (thing.kind == flow::Thing::Kind::ingredient && thing.ingredient >= 0 && !take(thing)) return false;
      }
    }
    if (!(grams_ >= least_grams)) return false;
    const auto depth = check_.states().steps[at(roast_)].depth_mm;
    const double thick = std::cbrt(4 * grams_ / 1000 / (roll * std::numbers::pi * meat.density));
    form_ = depth ? physics::Body::Part{physics::Shape::slab, *depth / 2000}
                  : physics::Body::Part{physics::Shape::cylinder, thick / 2};
    return true;
  }

  /// False when it is a second joint, or one that cannot be known.
  bool take(const flow::Thing& thing) {
    const fiche::Ingredient& line = check_.fiche.ingredients[at(thing.ingredient)];
    if (line.food == nullptr || line.food->role != food::Role::meat) return true;
    static constexpr std::array<std::string_view, 6> hollow{"chicken", "turkey", "duck",
                                                            "goose",   "quail",  "rabbit"};
    if (grams_ > 0 || !thing.grams || std::find(hollow.begin(), hollow.end(), line.food->id) != hollow.end())
      return false;
    const fiche::Statement* pieces = check_.fiche.statement(thing.node, At::pieces);
    const bool counted = pieces != nullptr && pieces->amount && pieces->amount->has_figure();
    const double count = counted ? pieces->amount->middle_base().approximate() : 1;
    if (!(count >= 1)) return false;
    grams_ = thing.grams->middle() / count;
    const flow::Range& celsius =
        check_.states().things[at(static_cast<int>(&thing - check_.flow.things.data()))].celsius;
    if (std::isfinite(celsius.low) && std::isfinite(celsius.high)) from_ = celsius.middle();
    return true;
  }

  /// What the oven was at, the roasting before this one first.
  bool find_stages() {
    for (int step = roast_; step >= 0 && stages_.size() < 4;) {
      if (!does(check_, step, {"roast", "bake"})) break;
      std::optional<double> celsius;
      for (const StatedHeat& heat : stated_heats(check_, check_.flow.steps[at(step)].node))
        if (heat.el == El::oven_temp && heat.high) celsius = heat.low ? (*heat.low + *heat.high) / 2 : *heat.high;
      const flow::StepLength& length = check_.times().lengths[at(step)];
      if (!celsius || (step != roast_ && !length.stated)) break;
      const auto around =
          flow::around_in(check_.kitchen, check_.document.get(check_.flow.steps[at(step)].node, At::on));
      const bool known = around && around->medium->id.starts_with("oven");
      stages_.insert(stages_.begin(), {*celsius, static_cast<double>(length.whole.least),
                                       known ? around->exposure.coefficient : any_oven,
                                       known ? around->exposure.moving : moving_in_any});
      step = maker_before(step);
    }
    return !stages_.empty();
  }

  [[nodiscard]] int maker_before(int step) const {
    for (const int use : check_.flow.steps[at(step)].takes) {
      const int maker = check_.flow.things[at(check_.flow.uses[at(use)].thing)].maker;
      if (maker >= 0 && check_.states().uses[at(use)].has(food::Role::meat)) return maker;
    }
    return -1;
  }

  const Check& check_;
  int roast_;
  double grams_ = 0, from_ = from_the_fridge;
  physics::Body::Part form_;
  std::vector<Stage> stages_;
};

}  // namespace

std::optional<JointRise> joint_rise(const Check& check, int roast, int rest, double pull) {
  const auto around = flow::around_in(check.kitchen, check.document.get(check.flow.steps[at(rest)].node, At::on));
  if (around && around->medium->id != "still-air") return std::nullopt;
  return Joint(check, roast).rise(pull);
}

}  // namespace tamis::rules
