#include "core/rules/heat_passage.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/flow/around.h"
#include "core/flow/do_actions.h"
#include "core/food/thermal.h"
#include "core/physics/grid.h"
#include "core/rules/cooling_stages.h"
#include "core/rules/food_kinds.h"
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

constexpr double apart = 2;           // K: less is a way of speaking
constexpr double small_share = 0.2;   // of what goes in: less does not decide how warm the mix is
constexpr double thin_water = 0.6;    // of it: below, nothing mixes itself
constexpr double on_metal = 2;        // a bench takes heat too, nobody knows how much
constexpr double light = 1.5;         // a foam conducts less and holds less; no more than that quicker
constexpr double rich_spare = 2;      // of an unknown liquid: one of fat holds half the heat of one of water,
constexpr double lean_spare = 1.4;    // cream and syrup hold a sixth less
/// What nobody knows the makeup of: of all foods, water lets heat pass through quickest.
constexpr food::Makeup mostly_water{.water = 0.9, .protein = 0.04, .carbohydrate = 0.05, .ash = 0.01};
const physics::Grid coarse{20, 0.04};  // within some percent of the fine one

/// What it is to come to, and by when where that is said beside it.
struct Target {
  const fiche::Statement* said = nullptr;
  double seconds = 0;
};

class Reader {
 public:
  Reader(const Check& check, int step)
      : check_(check), document_(check.document), step_(step), node_(check.flow.steps[at(step)].node) {}

  std::vector<HeatPassage> read() {
    std::vector<HeatPassage> out;
    const auto way = way_of_heat();
    if (!way || !read_depth() || !read_time() || !read_around()) return out;
    cools_ = *way != Heat::thaws;
    if (!read_food()) return out;
    for (const Target& target : targets()) {
      const auto to = cools_ ? high_of(*target.said) : low_of(*target.said);
      if (!to || (cools_ ? *to > made_.from - apart : *to < made_.from + apart)) continue;
      HeatPassage& passage = out.emplace_back(made_);
      passage.to = *to;
      passage.where = target.said->where;
      passage.seconds = std::max(made_.seconds, target.seconds);
      if (is_of_the_core(*target.said)) passage.place = Place::centre;
      if (!passage.known && passage.ice()) out.pop_back();  // how much ice, nobody knows
    }
    if (out.empty() && *way == Heat::thaws && made_.known && made_.from < made_.piece.freezes_at - apart) {
      made_.to = made_.piece.freezes_at + 0.1;
      made_.where = document_.head_span(node_);
      out.push_back(made_);
    }
    return out;
  }

 private:
  /// Of its cooling or thawing; empty for a step that does neither, or heats as well.
  [[nodiscard]] std::optional<Heat> way_of_heat() const {
    const flow::Doing doing = flow::doing_of(check_.fiche, check_.fiche.steps[at(step_)]);
    std::optional<Heat> found;
    if (!doing.unknown.empty()) return found;
    for (const flow::Action* action : doing.actions) {
      if (action->heats() || action->word == "churn") return std::nullopt;
      if (action->heat >= Heat::cools && action->heat <= Heat::thaws) found = action->heat;
    }
    return found;
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
    if (says(lower_words(check_, node_), {"marble", "granite", "slab", "marbre", "marmor", "mármol"})) return false;
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

  bool read_food() {
    const flow::State& state = check_.states().steps[at(step_)];
    if (!read_start()) return false;
    const auto makeup = flow::makeup_of(state);
    made_.piece.makeup = makeup.value_or(mostly_water);
    made_.piece.freezes_at = food::freezing_point(made_.piece.makeup).likely;
    if (state.air == flow::Action::Air::in) made_.spare = std::max(made_.spare, light);
    made_.piece.body.parts = {{physics::Shape::slab, made_.depth / 2}};
    const bool by_hand = says(lower_words(check_, node_), {"stir", "whisk", "remu", "rühr", "remov"});
    if (cools_ && (by_hand || may_be_thin(state))) {
      made_.piece.stirred = true;
      made_.piece.inside = by_hand ? physics::stirred_film : physics::still_film;
      const bool rich = state.has(food::Role::fat) || state.has(food::Role::chocolate) || state.has(food::Role::nut);
      if (!makeup) made_.spare = std::max(made_.spare, rich ? rich_spare : lean_spare);
    }
    made_.known = makeup.has_value();
    made_ = made_.at_depth(made_.depth);
    return true;
  }

  /// Pours, as far as anybody can tell from what it is made of: what was strained out may still be named in it.
  [[nodiscard]] bool may_be_thin(const flow::State& state) const {
    if (state.has(food::Role::starch) || state.has(food::Role::setting)) return false;
    const unsigned kinds = food_kinds(check_).steps[at(step_)];
    return (kinds & (kind::thickener | kind::any_gelatine | kind::other_setting)) == 0 &&
           state.share(flow::Constituent::water).high >= thin_water;
  }

  /// The end of what goes in that is nearer to where it is to go.
  bool read_start() {
    const flow::Step& step = check_.flow.steps[at(step_)];
    double all = 0;
    for (const int use : step.takes) all += grams_of(use);
    std::optional<double> from;
    for (const int use : step.takes) {
      if (!check_.flow.things[at(check_.flow.uses[at(use)].thing)].counts || grams_of(use) < small_share * all) continue;
      const flow::Range& celsius = check_.states().uses[at(use)].celsius;
      const double end = cools_ ? celsius.low : celsius.high;
      from = !from ? end : cools_ ? std::min(*from, end) : std::max(*from, end);
    }
    if (!from || !std::isfinite(*from)) return false;
    made_.from = *from;
    return true;
  }

  [[nodiscard]] double grams_of(int use) const {
    const auto& grams = check_.states().uses[at(use)].grams;
    return grams ? grams->high : 0;
  }

  // ---- where it is to go
  [[nodiscard]] std::vector<Target> targets() const {
    std::vector<Target> out;
    const auto& heats = stated_heats(check_, node_);
    for (auto heat = heats.rbegin(); heat != heats.rend() && out.empty(); ++heat)
      if (heat->el == El::food_temp) add(out, *heat->statement, 0);
    for (Node c = document_.first_child(node_); c != fiche::none; c = document_.next(c)) {
      if (document_.el(c) == El::gate) gate(out, c);
      if (document_.el(c) == El::control) control(out, c);
    }
    return out;
  }

  void add(std::vector<Target>& out, const fiche::Statement& said, double seconds) const {
    if (document_.get(said.node, At::place) == "surface" || !is_of_what_it_makes(said.node)) return;
    if (said.amount && said.amount->has_figure()) out.push_back({&said, seconds});
  }

  [[nodiscard]] bool is_of_what_it_makes(Node of) const {
    const std::string_view id = document_.get(of, At::of);
    const auto& gives = check_.flow.steps[at(step_)].gives;
    return id.empty() || std::any_of(gives.begin(), gives.end(), [&](int thing) { return check_.flow.things[at(thing)].id == id; });
  }

  void gate(std::vector<Target>& out, Node gate) const {
    if (!is_of_what_it_makes(gate)) return;
    for (Node c = document_.first_child(gate); c != fiche::none; c = document_.next(c)) {
      const fiche::Statement* said = document_.el(c) == El::food_temp ? check_.fiche.statement(c) : nullptr;
      if (said != nullptr) add(out, *said, 0);
    }
  }

  /// The last it asks for, by the end of the time it allows.
  void control(std::vector<Target>& out, Node control) const {
    const auto stages = cooling_stages(check_, control);
    if (!stages.empty()) return add(out, *stages.back().heat, stages.back().seconds);
    gate(out, control);
  }

  [[nodiscard]] bool is_of_the_core(const fiche::Statement& said) const {
    return document_.get(said.node, At::place) == "core" ||
           says_core(words_around(document_, document_.parent(said.node)));
  }

  const Check& check_;
  const fiche::Document& document_;
  int step_;
  Node node_;
  bool cools_ = true;
  HeatPassage made_;
};

/// One temperature and one coefficient.
physics::Exposure only(double celsius, double coefficient) {
  return {{celsius, celsius, celsius}, {coefficient, coefficient, coefficient}, {0, 0, 0}};
}

double quick_medium(const HeatPassage& p) { return p.to < p.from ? p.exposure.celsius.low : p.exposure.celsius.high; }

physics::Course course_of(const HeatPassage& p, double medium, double coefficient, double to) {
  const auto substance = physics::substance_of(p.piece.makeup, p.piece.freezes_at, std::max({p.from, p.to, 0.0}));
  return physics::course(p.piece.body, substance, coefficient, p.from, medium, to, p.place, coarse);
}

}  // namespace

HeatPassage HeatPassage::at_depth(double metres) const {
  HeatPassage out = *this;
  out.depth = metres;
  out.piece.body.parts = {{physics::Shape::slab, metres / 2}};
  out.piece.volume = metres;  // of a square metre
  out.piece.area = 2;
  out.piece.open_area = 1;
  return out;
}

std::vector<HeatPassage> heat_passages(const Check& check, int step) { return Reader(check, step).read(); }

double quickest(const HeatPassage& p) {
  if (p.ice()) return course_of(p, quick_medium(p), p.exposure.coefficient.high, p.to).seconds.value_or(0);
  const auto bounds = physics::screen(p.piece, p.exposure, p.from, p.to, p.place);
  return bounds ? bounds->low : 0;
}

double likely(const HeatPassage& p) {
  const double medium = p.exposure.celsius.likely, coefficient = p.exposure.coefficient.likely;
  if (p.ice()) return course_of(p, medium, coefficient, p.to).seconds.value_or(0);
  const auto bounds = physics::screen(p.piece, only(medium, coefficient), p.from, p.to, p.place);
  return bounds && std::isfinite(bounds->high) ? (bounds->low + bounds->high) / 2 : 0;
}

double reached(const HeatPassage& p) {
  const double medium = quick_medium(p), coefficient = p.exposure.coefficient.high;
  if (!p.ice()) return physics::warmth_after(p.piece, only(medium, coefficient), p.from, p.seconds, p.place).likely;
  double before = p.from;
  for (const auto& [seconds, celsius] : course_of(p, medium, coefficient, p.to).points) {
    if (seconds > p.seconds) break;
    before = celsius;
  }
  return before;
}

}  // namespace tamis::rules
