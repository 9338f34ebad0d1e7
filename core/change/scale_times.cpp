// Times that are for another depth or mass: what they were for, what it takes now as far as conduction tells, and
// what decides. The fiche keeps the author's time.

#include <algorithm>
#include <cmath>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/change/scale_mould.h"
#include "core/change/scale_step.h"
#include "core/flow/around.h"
#include "core/measure/rough_time.h"
#include "core/physics/size_ratio.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::El;
using fiche::Node;
using physics::Ends;

namespace {

// What heat passes through, W/(m K): foods rich in fat to foods of water, set or raw; frozen to half frozen (Choi
// and Okos).
constexpr Ends wet{0.3, 0.62}, frozen{0.9, 1.9};
// Shares of the first difference that are left when the middle is done: meat at 55 °C out of a slow oven to a
// crumb at 98 °C; a mousse that sets to a stew that is cold.
constexpr Ends heated{0.25, 0.8}, cooled{0.05, 0.5};
constexpr double long_rest = 6 * 3600;  // s; so long in the cold is a rest, and no time of cooling
constexpr double telling = 1.05;        // less is within what the author's own range says

std::string_view depth_source() {
  return "conduction: a time grows between the depth and its square, as the surface lets heat in";
}

class Timing {
 public:
  Timing(ScaleStep& at, const fiche::Step& step) : at_(at), step_(step) {}

  void look() {
    const bool bakes = ScaleStep::does(step_, {"bake", "roast"});
    const bool cools = ScaleStep::does(step_, {"chill", "cool", "freeze", "thaw"});
    if (!bakes && !cools && !ScaleStep::does(step_, {"poach", "steam"})) return;
    time_ = at_.stated_time(step_);
    if (!time_) return;
    if (ScaleStep::does(step_, {"line", "roll"})) return;  // the pastry alone
    if (const SizeChange* change = size_change(); change != nullptr) return otherwise_deep(*change);
    if (bakes) return larger_piece();
    if (cools && !ScaleStep::does(step_, {"thaw"}) && !in_moulds(step_.component) && !in_portions())
      in_one_vessel();
  }

 private:
  // ---- which moulds the food is in

  bool own_moulds(Node component) const {
    if (component == fiche::none) return false;
    const auto yields = children_of(at_.document, component, El::yield);
    return std::any_of(yields.begin(), yields.end(),
                       [&](Node yield) { return !children_of(at_.document, yield, El::mould).empty(); });
  }

  /// The component bakes or sets in the moulds of the fiche or its own: more of the same ones keep their time.
  bool in_moulds(Node component, bool roasting_counts = true) const {
    if (own_moulds(component)) return true;
    const auto& yields = at_.work.yields;
    if (yields.empty() || children_of(at_.document, yields.front(), El::mould).empty()) return false;
    return std::any_of(at_.work.author.steps.begin(), at_.work.author.steps.end(), [&](const fiche::Step& step) {
      return step.component == component && (ScaleStep::does(step, {"bake", "spread", "fill", "pour", "assemble",
                                                                    "line", "pipe", "mould", "layer"}) ||
                                             (roasting_counts && ScaleStep::does(step, {"roast"})));
    });
  }

  /// How the moulds that the step's food is in have changed; null where they have not, or it lies in none of them.
  const SizeChange* size_change() const {
    const Node component = own_moulds(step_.component) ? step_.component : fiche::none;
    if (component == fiche::none && !in_moulds(step_.component, false)) return nullptr;
    for (const SizeChange& change : at_.work.sizes)
      if (change.component == component && !lies_otherwise(change)) return &change;
    return nullptr;
  }

  /// It says itself how deep the food lies, and that is not the moulds' depth: a sheet on a tray.
  bool lies_otherwise(const SizeChange& change) const {
    const auto depth = state().depth_mm;
    return depth && !change.was.empty() && std::abs(*depth / 2000 / change.from.parts.front().length - 1) > 0.1;
  }

  const flow::State& state() const {
    return at_.work.states().steps[static_cast<std::size_t>(&step_ - at_.work.author.steps.data())];
  }

  /// Portions of the author's size, only more of them.
  bool in_portions() const {
    if (ScaleStep::does(step_, {"portion", "pipe", "scoop", "shape"})) return true;
    const std::string words = base::lower(at_.document.all_text(step_.node));
    return base::says(words, {"each ", "chaque ", "chacun", "jede", "cada "});
  }

  // ---- what passes the heat

  /// Dough and batter: steam carries heat through the crumb, so that nobody knows how much the surface decides.
  bool is_crumb() const { return ScaleStep::does(step_, {"bake"}) && state().has(food::Role::flour); }

  Ends conductivity(double celsius) const {
    const auto makeup = flow::makeup_of(state());
    if (!makeup) return wet;
    const double k = food::unfrozen(*makeup, celsius).conductivity;
    return {state().air == flow::Action::Air::in ? k / 2 : k, k};
  }

  Ends coefficient() const {
    std::string_view on = at_.document.get(step_.node, At::on);
    const bool cold = ScaleStep::does(step_, {"chill", "cool", "freeze", "thaw"});
    if (on.empty()) on = cold ? "fridge" : "oven";
    const auto around = flow::around_in(at_.work.kitchen, on);
    const physics::Range range = around ? around->exposure.coefficient : physics::Range{5, 20, 1000};
    // A wet surface in the oven stays at what its steam lets it, whatever the air: the inside alone decides then.
    return {range.low, cold ? range.high : physics::any_coefficient.high};
  }

  /// How many times the author's time.
  Ends ratio(const physics::Body& from, const physics::Body& to) const {
    if (ScaleStep::does(step_, {"freeze", "thaw"}))
      return physics::freezing_ratio(from, to,
                                     {coefficient(), ScaleStep::does(step_, {"thaw"}) ? wet : frozen, {}});
    if (is_crumb()) return physics::size_ratio(from, to, {physics::any_coefficient, wet, heated});
    const bool cools = ScaleStep::does(step_, {"chill", "cool"});
    return physics::size_ratio(from, to, {coefficient(), conductivity(cools ? 30 : 60), cools ? cooled : heated});
  }

  // ---- what decides

  std::string sign_in(Node node, bool core_only) const {
    for (Node c = at_.document.first_child(node); c != fiche::none; c = at_.document.next(c)) {
      if (at_.document.kind(c) != fiche::NodeKind::element) continue;
      const El el = at_.document.el(c);
      const std::string_view place = at_.document.get(c, At::place);
      if (el == El::food_temp && (place == "core" || (!core_only && place.empty())))
        return (place == "core" ? "the core, " : "the food, ") + at_.document.all_text(c);
      if (el != El::until && el != El::gate && el != El::control && el != El::done) continue;
      if (std::string found = sign_in(c, false); !found.empty()) return found;
    }
    return {};
  }

  /// "the core, 98 °C"; what the author says it is done by, else what is common practice.
  std::string sign(const char* otherwise) const {
    if (std::string found = sign_in(step_.node, true); !found.empty()) return found;
    for (const Node until : children_of(at_.document, step_.node, El::until)) {
      const std::string words = at_.document.all_text(until);
      if (words.size() <= 60 && words.find('\n') == std::string::npos)
        return "the author's sign, \"" + words + "\"";
    }
    return otherwise;
  }

  static std::string between(const ScaleStep::Time& time, const Ends& ratio) {
    return measure::rough_times(*time.least * ratio.low, *time.most * ratio.high);
  }

  // ---- what is said

  void otherwise_deep(const SizeChange& change) {
    const char* usual = ScaleStep::does(step_, {"bake", "roast", "poach", "steam"}) ? "the cue and the core"
                                                                                    : "a probe in the middle";
    const bool known = time_->least && !change.from.parts.empty() && !change.to.parts.empty();
    if (!known) {
      at_.say_once("time-not-scaled", time_->where,
                   "the food stands at another depth than the author's; the time was left as it is",
                   "look early and go by " + sign(usual) + ": twice as deep takes up to four times as long",
                   std::string(depth_source()));
      return;
    }
    const Ends times = ratio(change.from, change.to);
    const bool cools = ScaleStep::does(step_, {"chill", "cool", "freeze", "thaw"});
    if (times.high < telling && (cools || times.low > 1 / telling)) return;  // in the cold, long enough is enough
    const std::string is_for =
        change.was.empty() ? "for the author's mould; in this one" : "for " + change.was + "; at " + change.now;
    at_.say_once("time-not-scaled", time_->where,
                 "the time, " + time_->written + ", is " + is_for + " it takes about " + between(*time_, times),
                 "look from " + measure::rough_time(*time_->least * times.low, measure::Toward::down) +
                     " on and go by " + sign(usual) + "; the fiche keeps the author's time",
                 std::string(depth_source()) + (is_crumb() ? "; in a crumb steam carries heat as well" : ""));
  }

  /// More rolls of the same size keep their time.
  bool makes_pieces() const {
    if (at_.work.yields.empty()) return false;
    const Node yield = at_.work.yields.front();
    return at_.document.find(yield, At::pieces) != fiche::none ||
           at_.document.find(yield, At::each) != fiche::none;
  }

  /// Of meat and fish that the component counts there are more, and none is larger.
  bool takes_counted() const {
    const auto& all = at_.work.author.ingredients;
    return std::any_of(all.begin(), all.end(), [this](const fiche::Ingredient& one) {
      const bool joint =
          one.food != nullptr && (one.food->role == food::Role::meat || one.food->role == food::Role::fish);
      const auto pieces = at_.work.number(one.node, At::pieces);
      return joint && pieces && *pieces > 1 && is_of(one.node, step_.component);
    });
  }
  bool is_of(Node node, Node component) const {
    while (node != fiche::none && node != component) node = at_.document.parent(node);
    return node == component && node != fiche::none;
  }

  /// Without moulds or pieces a joint or a loaf may itself be larger.
  void larger_piece() {
    if (in_moulds(step_.component) || (ScaleStep::does(step_, {"bake"}) && makes_pieces()) || !at_.differs())
      return;
    if (takes_counted()) return;
    const bool joint = state().has(food::Role::meat) || state().has(food::Role::fish);
    const bool one = joint && at_.larger(1) && time_->least && sign_in(step_.node, true).starts_with("the core");
    at_.say_once(
        "time-not-scaled", time_->where,
        "the batch is " + at_.how_often +
            " times the author's, and the fiche names no mould: the time holds for pieces of the "
            "author's size" +
            (one ? "; one so much larger takes about " + between(*time_, of_larger_piece()) : ""),
        "make more pieces of the same size, or go by " + sign("the core"),
        one ? "conduction: the time of a piece grows between the third root of its mass and that root's square"
            : "common practice");
  }

  /// A ball or a joint of the same form, so many times as heavy.
  Ends of_larger_piece() const {
    const double root = std::cbrt(at_.work.factor.approximate());
    return {root, root * root};
  }

  void in_one_vessel() {
    if (!at_.larger(Ratio(3, 2)) || state().depth_mm)
      return;  // spread as deep as the author says, it keeps its time
    if (time_->least && *time_->least >= long_rest && sign_in(step_.node, false).empty()) return;
    const std::string advice = "divide it into shallow vessels, no deeper than the author's, and probe the middle";
    if (!time_->least) {
      at_.say_once("time-not-scaled", time_->where,
                   at_.how_often + " times as much in one vessel cools more slowly; the time was left as it is",
                   advice);
      return;
    }
    at_.say_once("time-not-scaled", time_->where,
                 "the time, " + time_->written + ", is for the author's batch; " + at_.how_often +
                     " times as much in one vessel of the same form takes about " +
                     between(*time_, of_larger_piece()),
                 advice,
                 "a vessel so many times as full: between the third root of the mass (stirred) and that root's "
                 "square (set)");
  }

  ScaleStep& at_;
  const fiche::Step& step_;
  std::optional<ScaleStep::Time> time_;
};

}  // namespace

void look_at_time(ScaleStep& at, const fiche::Step& step) { Timing(at, step).look(); }

}  // namespace tamis::change
