#include "core/rules/heat_passage.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/flow/around.h"
#include "core/flow/do_actions.h"
#include "core/food/thermal.h"
#include "core/rules/food_kinds.h"
#include "core/rules/heat_targets.h"
#include "core/rules/heated.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Heat = flow::Action::Heat;
using physics::Place;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double freezes_above = -3;  // °C: what is colder is frozen, but for brandy
constexpr double apart = 2;           // K: less is a way of speaking
constexpr double small_share = 0.2;   // of what goes in: less does not decide how warm the mix is
constexpr double thin_water = 0.6;    // of it: below, nothing mixes itself
constexpr double on_metal = 2;        // a bench takes heat too, nobody knows how much
constexpr double light = 1.5;         // a foam conducts less and holds less; no more than that quicker
constexpr double rich_spare = 2;      // of an unknown liquid: one of fat holds half the heat of one of water,
constexpr double lean_spare = 1.4;    // cream and syrup hold a sixth less
/// What nobody knows the makeup of: of all foods, water lets heat pass through quickest.
constexpr food::Makeup mostly_water{.water = 0.9, .protein = 0.04, .carbohydrate = 0.05, .ash = 0.01};
constexpr double near = 1;          // K: so near to what surrounds it, it is as warm
constexpr double fans_and_dew = 2;  // what is frozen draws water out of the air, and a fridge may have a fan
constexpr double in_pieces =
    2;  // a roll warms twice as quickly as a slab of its thickness, and nobody says which it is
constexpr physics::Range any_water{100, 300, 1000};  // a bath to gently boiling water (core/physics/media.inc)
constexpr double frozen_hard = -12;                  // °C, of what lay long in a freezer; the warmer end
constexpr double long_frozen = 6 * 3600;             // s

/// What a step does to the heat of its food.
enum class Way : unsigned char {
  cools,  ///< cools, chills or freezes
  thaws,
  tempers,  ///< stands somewhere warmer: counts where it is frozen
  heats,    ///< in water, steam or oven
};

/// Whether anything in the fiche can be frozen at all, cheaply.
bool speaks_of_ice(const Check& check) {
  struct Ice {
    bool any;
  };
  return check
      .once<Ice>([&check] {
        const auto freezes = [](const fiche::Step& step) {
          return std::find(step.actions.begin(), step.actions.end(), "freeze") != step.actions.end();
        };
        const auto frozen = [&check](const fiche::Ingredient& line) {
          const fiche::Statement* at = check.fiche.statement(line.node, At::at);
          return (line.food != nullptr && line.food->id.find("frozen") != std::string_view::npos) ||
                 check.document.get(line.node, At::at).find("frozen") != std::string_view::npos ||
                 (at != nullptr && high_of(*at).value_or(0) < 0);
        };
        const auto& steps = check.fiche.steps;
        const auto& lines = check.fiche.ingredients;
        return Ice{std::any_of(steps.begin(), steps.end(), freezes) ||
                   std::any_of(lines.begin(), lines.end(), frozen)};
      })
      .any;
}

class Reader {
 public:
  Reader(const Check& check, int step)
      : check_(check), document_(check.document), step_(step), node_(check.flow.steps[at(step)].node) {}

  std::vector<HeatPassage> read() {
    std::vector<HeatPassage> out;
    const auto way = way_of_heat();
    if (!way || !read_depth() || !read_time()) return out;
    way_ = *way;
    if (!(way_ == Way::heats ? read_heating() : read_around()) || !read_food()) return out;
    auto targets = heat_targets(check_, step_);
    if (targets.empty() && way_ == Way::tempers) targets = targets_of_takers(check_, step_);
    for (const HeatTarget& target : targets) {
      const auto asked = warms() ? low_of(*target.said) : high_of(*target.said);
      auto to = asked;
      if (to && way_ != Way::heats && warms()) to = std::min(*to, made_.exposure.celsius.high - near);
      if (!to || (warms() ? *to < made_.from + apart : *to > made_.from - apart)) continue;
      HeatPassage& passage = out.emplace_back(made_);
      passage.to = *to;
      passage.asked = *asked;
      passage.where = target.said->where;
      passage.seconds = std::max(made_.seconds, target.seconds);
      if (target.core) passage.place = Place::centre;
      if (!passage.known && passage.ice()) out.pop_back();  // how much ice, nobody knows
    }
    if (out.empty() && way_ == Way::thaws && made_.known && made_.from < made_.piece.freezes_at - apart) {
      made_.to = made_.asked = made_.piece.freezes_at + 0.1;
      made_.where = document_.head_span(node_);
      out.push_back(made_);
    }
    return out;
  }

 private:
  [[nodiscard]] bool warms() const { return way_ != Way::cools; }

  /// Empty for a step that does several of them, or none.
  [[nodiscard]] std::optional<Way> way_of_heat() const {
    const flow::Doing doing = flow::doing_of(check_.fiche, check_.fiche.steps[at(step_)]);
    if (!doing.unknown.empty()) return std::nullopt;
    std::optional<Way> found;
    int heating = 0, others = 0;
    bool freezes = false;
    for (const flow::Action* action : doing.actions) {
      if (action->word == "churn") return std::nullopt;
      if (action->heats()) {
        static constexpr std::array<std::string_view, 6> plain{"reheat", "poach", "steam", "cook", "warm", "heat"};
        if (std::find(plain.begin(), plain.end(), action->word) == plain.end()) return std::nullopt;
        ++heating;
        continue;
      }
      const bool moves = action->heat >= Heat::cools && action->heat <= Heat::thaws;
      const bool waits =
          action->heat == Heat::either || action->heat == Heat::stands || action->heat == Heat::holds;
      if (moves) found = action->heat == Heat::thaws ? Way::thaws : Way::cools;
      if (waits && !found) found = Way::tempers;
      freezes = freezes || action->heat == Heat::freezes;
      others += moves || waits ? 1 : 0;
    }
    if (heating > 0) return heating == 1 && others == 0 ? std::optional(Way::heats) : std::nullopt;
    // What is put from the freezer into the fridge is not chilled there.
    if (found == Way::cools && !freezes && frozen_before()) return Way::tempers;
    return found == Way::tempers && !frozen_before() ? std::nullopt : found;
  }

  /// What goes in is frozen, as far as anybody can tell: all of what counts.
  [[nodiscard]] bool frozen_before() const {
    if (!speaks_of_ice(check_)) return false;
    const auto from = start_of(true);
    return from && *from < freezes_above;
  }

  bool read_depth() {
    const auto depth = check_.states().steps[at(step_)].depth_mm;
    if (!depth || *depth <= 0) return false;
    made_.depth = *depth / 1000;
    return true;
  }

  bool read_time() {
    const flow::StepLength& length = check_.times().lengths[at(step_)];
    if (!length.stated) return false;
    made_.seconds = static_cast<double>(length.whole.most.value_or(length.whole.least));
    return made_.seconds > 0;
  }

  bool read_around() {
    const auto around = flow::around_in(check_.kitchen, document_.get(node_, At::on));
    if (!around) return false;
    if (says(lower_words(check_, node_), {"marble", "granite", "slab", "marbre", "marmor", "mármol"}))
      return false;
    if (around->medium->id == "still-air") made_.spare = on_metal;
    made_.exposure = around->exposure;
    made_.in = around->medium->english;
    for (const StatedHeat& heat : stated_heats(check_, node_)) {
      if (heat.el == El::oven_temp) return false;
      if (heat.el == El::medium_temp && heat.low && heat.high) {
        made_.exposure.celsius = {*heat.low, (*heat.low + *heat.high) / 2, *heat.high};
      }
    }
    return !std::isnan(made_.exposure.celsius.likely);
  }

  /// What heats a solid piece: water, steam or an oven whose temperature is said.
  bool read_heating() {
    if (says(lower_words(check_, node_), {"microwave", "pressure", "grill", "pan"})) return false;
    const StatedHeat* hot = nullptr;
    for (const StatedHeat& heat : stated_heats(check_, node_)) {
      if (heat.el == El::food_temp) continue;
      if (hot != nullptr || !heat.low || !heat.high) return false;
      hot = &heat;
    }
    const auto around = flow::around_in(check_.kitchen, document_.get(node_, At::on));
    const std::string_view id = around ? around->medium->id : std::string_view();
    const bool dry = id.starts_with("oven"),
               wet = id.starts_with("water-bath") || id == "boiling-water" || id == "steam";
    if (hot == nullptr && !(id == "boiling-water" || id == "steam")) return false;
    if (hot != nullptr && (hot->el == El::oven_temp) != dry) return false;
    if (dry && document_.get(hot->statement->node, At::mode) != "fan" &&
        document_.get(hot->statement->node, At::mode) != "static" &&
        document_.get(hot->statement->node, At::mode) != "deck")
      return false;  // steam heats quicker than any air
    if (around && (dry || wet)) {
      made_.exposure = around->exposure;
      made_.in = around->medium->english;
    } else {
      made_.exposure.coefficient = any_water;
      made_.in = "in water";
    }
    if (hot != nullptr) made_.exposure.celsius = {*hot->low, (*hot->low + *hot->high) / 2, *hot->high};
    if (!dry) made_.exposure.coefficient.high = std::max(made_.exposure.coefficient.high, any_water.high);
    made_.spare = in_pieces;
    return true;
  }

  bool read_food() {
    const flow::State& state = check_.states().steps[at(step_)];
    const auto start = start_of(warms());
    if (!start) return false;
    made_.from = *start;
    const auto makeup = flow::makeup_of(state);
    if (way_ == Way::heats && (!is_solid(state) || by_hand() || state.air == flow::Action::Air::in)) return false;
    made_.piece.makeup = makeup.value_or(mostly_water);
    made_.piece.freezes_at = food::freezing_point(made_.piece.makeup).likely;
    if (state.air == flow::Action::Air::in) made_.spare = std::max(made_.spare, light);
    if ((way_ == Way::thaws || way_ == Way::tempers) && made_.exposure.moving.high > 0)
      made_.spare = std::max(made_.spare, fans_and_dew);
    made_.stands = way_ == Way::tempers;
    made_.piece.body.parts = {{physics::Shape::slab, made_.depth / 2}};
    if (way_ == Way::cools && (by_hand() || may_be_thin(state))) {
      made_.piece.stirred = true;
      made_.piece.inside = by_hand() ? physics::stirred_film : physics::still_film;
      const bool rich =
          state.has(food::Role::fat) || state.has(food::Role::chocolate) || state.has(food::Role::nut);
      if (!makeup) made_.spare = std::max(made_.spare, rich ? rich_spare : lean_spare);
    }
    made_.known = makeup.has_value();
    made_ = made_.at_depth(made_.depth);
    return true;
  }

  [[nodiscard]] bool by_hand() const {
    return says(lower_words(check_, node_), {"stir", "whisk", "remu", "rühr", "remov"});
  }

  /// A piece of meat, fish, fruit or vegetable with nothing that pours, or what cannot pour.
  [[nodiscard]] bool is_solid(const flow::State& state) const {
    using food::Role;
    const auto any = [&state](std::initializer_list<Role> roles) {
      return std::any_of(roles.begin(), roles.end(), [&state](Role role) { return state.has(role); });
    };
    if (any({Role::meat, Role::fish, Role::vegetable, Role::fruit}) &&
        !any({Role::liquid, Role::dairy, Role::egg, Role::alcohol}))
      return true;
    return !may_be_thin(state);
  }

  /// Pours, as far as anybody can tell from what it is made of: what was strained out may still be named in it.
  [[nodiscard]] bool may_be_thin(const flow::State& state) const {
    if (state.has(food::Role::starch) || state.has(food::Role::setting)) return false;
    const unsigned kinds = food_kinds(check_).steps[at(step_)];
    return (kinds & (kind::thickener | kind::any_gelatine | kind::other_setting)) == 0 &&
           state.share(flow::Constituent::water).high >= thin_water;
  }

  /// The end of what goes in that is nearer to where it is to go: the warmest where it warms.
  [[nodiscard]] std::optional<double> start_of(bool warms) const {
    const flow::Step& step = check_.flow.steps[at(step_)];
    double all = 0;
    for (const int use : step.takes) all += grams_of(use);
    std::optional<double> from;
    for (const int use : step.takes) {
      const flow::Thing& thing = check_.flow.things[at(check_.flow.uses[at(use)].thing)];
      if (!thing.counts || grams_of(use) < small_share * all) continue;
      const flow::Range& celsius = check_.states().uses[at(use)].celsius;
      const double high = lay_in_the_freezer(thing.maker) ? std::min(celsius.high, frozen_hard) : celsius.high;
      from = !from ? (warms ? high : celsius.low) : warms ? std::max(*from, high) : std::min(*from, celsius.low);
    }
    return from && std::isfinite(*from) ? from : std::nullopt;
  }

  /// Long enough to be hard, whatever figure is missing.
  [[nodiscard]] bool lay_in_the_freezer(int maker) const {
    if (maker < 0 || !does(check_, maker, {"freeze"})) return false;
    const flow::StepLength& length = check_.times().lengths[at(maker)];
    return length.stated && static_cast<double>(length.whole.least) >= long_frozen;
  }

  [[nodiscard]] double grams_of(int use) const {
    const auto& grams = check_.states().uses[at(use)].grams;
    return grams ? grams->high : 0;
  }

  const Check& check_;
  const fiche::Document& document_;
  int step_;
  Node node_;
  Way way_ = Way::cools;
  HeatPassage made_;
};

}  // namespace

std::vector<HeatPassage> heat_passages(const Check& check, int step) { return Reader(check, step).read(); }

}  // namespace tamis::rules
