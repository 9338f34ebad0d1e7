#include <algorithm>
#include <cmath>
#include <optional>

#include "core/rules/gate_steps.h"
#include "core/rules/heated.h"
#include "core/rules/joint_rise.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;

// What a roast goes on rising by in its middle while it rests, K (common practice: 3 to 8, a large joint out of a
// hot oven 10; out of an oven little hotter than it is to be, hardly anything).
constexpr double most_rise = 10;
constexpr double usual_rise = 8;
constexpr double gentle_rise = 4;
constexpr double gentle_oven = 110;  // °C
constexpr double probes_differ = 1;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// What the step roasts it to, the last figure it gives of the food; null where it gives none.
const Statement* roasted_to(const Check& check, int step) {
  const Statement* out = nullptr;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node))
    if (heat.el == El::food_temp && heat.high) out = heat.statement;
  return out;
}

/// The hottest oven that the step states; empty where it states none.
std::optional<double> oven_of(const Check& check, int step) {
  std::optional<double> out;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node))
    if (heat.el == El::oven_temp && heat.high) out = std::max(out.value_or(*heat.high), *heat.high);
  return out;
}

/// The least that the rest asks for in the middle, in its own sentence, its gates and its controls.
const Statement* asked_in(const Check& check, int step) {
  const fiche::Document& document = check.document;
  const Statement* found = nullptr;
  const auto take = [&](const Statement* said) {
    if (said == nullptr || document.get(said->node, At::place) == "surface" || !low_of(*said)) return;
    if (found == nullptr || *low_of(*said) > *low_of(*found)) found = said;
  };
  const Node node = check.flow.steps[at(step)].node;
  for (const StatedHeat& heat : stated_heats(check, node))
    if (heat.el == El::food_temp) take(heat.statement);
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.el(c) != El::gate && document.el(c) != El::control) continue;
    for (Node mark = document.first_child(c); mark != fiche::none; mark = document.next(mark))
      if (document.el(mark) == El::food_temp) take(check.fiche.statement(mark));
  }
  return found;
}

/// "57–60 °C".
std::string up_to(double from, const JointRise& rise) {
  const auto low = std::lround(std::floor(from + rise.low)), high = std::lround(std::ceil(from + rise.high));
  return std::to_string(low) + "–" + std::to_string(high) + " °C";
}

void look_at(Check& check, int step) {
  if (!does(check, step, {"rest"}) || may_heat(check, step)) return;
  for (const int use : check.flow.steps[at(step)].takes) {
    const flow::Thing& thing = check.flow.things[at(check.flow.uses[at(use)].thing)];
    if (thing.maker < 0 || !does(check, thing.maker, {"roast", "bake", "grill", "sear", "fry"}) ||
        !check.states().uses[at(use)].has(food::Role::meat))
      continue;
    const Statement* left = roasted_to(check, thing.maker);
    const Statement* asked = asked_in(check, step);
    if (left == nullptr || asked == nullptr) return;
    const auto oven = oven_of(check, thing.maker);
    const double rise = *low_of(*asked) - *high_of(*left);
    const bool gentle =
        oven && *oven <= gentle_oven && *oven > *high_of(*left);  // a colder one is food-hotter-than-oven's
    const double surely = gentle ? gentle_rise : usual_rise;
    if (rise <= surely) return;
    const auto known = joint_rise(check, thing.maker, step, *high_of(*left));
    const double most = known    ? std::max(known->high + probes_differ, surely)
                        : gentle ? gentle_rise
                                 : most_rise;
    if (rise <= most) return;
    const double usual = known ? (known->low + known->high) / 2 : most / 2;
    const std::string rises =
        known ? known->of + " rises to " + up_to(*high_of(*left), *known)
              : "it rises by " + std::string(gentle ? "up to 4 °C out of so gentle an oven" : "3 to 10 °C");
    check
        .say(asked->where,
             "this asks for " + degrees(*low_of(*asked)) + " after the rest, and it goes to rest at " +
                 degrees(*high_of(*left)) + ": " + rises +
                 (known ? ", not to " + degrees(*low_of(*asked)) : ", not by " + degrees(rise)),
             "roast on to " + degrees(std::ceil(*low_of(*asked) - usual)) + " or more, and let the probe decide")
        .related.push_back({left->where, "it leaves the heat at this", {}, {}, {}});
    return;
  }
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// A rest that is to lift meat further than a rest does.
const Rule rises_less_than_asked = {
    .id = "rises-less-than-asked",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "meat that is to rise further while it rests than a rest lifts it",
    .explanation =
        R"(A roast goes on rising while it rests: its outside is hotter than its middle, and that heat moves in. It is 3 to
8 °C as a rule, 10 °C for a large joint out of a hot oven, and hardly anything where the oven was little hotter than the meat.
Who counts on more carves it raw.

The least that a resting step asks for, in its sentence, a gate or a control point, is held against the temperature at which the
step before leaves the meat. Where the fiche says what one joint weighs and how hot its oven is, the rise is worked out: heat
that is conducted in a roll of that mass, whose surface takes it from the oven's air and loses it with the steam that goes off,
then rests in the room. The most of that is allowed and 1 °C for the probe; 8 °C at any rate, 4 °C out of an oven of 110 °C or
less. Where it does not, or of a whole bird, 10 °C are allowed, 4 °C out of such a gentle oven.)",
    .bad = R"(    <ingredient id="leg" food="lamb-leg">2 kg</ingredient>
    <step do="roast" on="oven" makes="roast" unattended="70 min">Roast the <use of="leg">leg</use> at <oven-temp mode="fan">160 °C</oven-temp> to
      <food-temp place="core">45 °C</food-temp>.</step>
    <step do="rest" on="bench" unattended="25 min">Rest the <use of="roast">leg</use>.<gate>The centre is at
      <food-temp place="core">at least 63 °C</food-temp>.</gate></step>)",
    .good = R"(    <ingredient id="leg" food="lamb-leg">2 kg</ingredient>
    <step do="roast" on="oven" makes="roast" unattended="70 min">Roast the <use of="leg">leg</use> at <oven-temp mode="fan">160 °C</oven-temp> to
      <food-temp place="core">58 °C</food-temp>.</step>
    <step do="rest" on="bench" unattended="25 min">Rest the <use of="roast">leg</use>.<gate>The centre is at
      <food-temp place="core">at least 63 °C</food-temp>.</gate></step>)",
    .source = "conduction with steam at the surface, held against common practice (3 to 10 K) and cooking losses",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
