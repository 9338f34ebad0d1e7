#include <algorithm>

#include "core/rules/gate_steps.h"
#include "core/rules/heated.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/sentence.h"
#include "core/rules/standing.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::El;

constexpr double hair = 0.5;          // °C: rounding of one scale to the other
constexpr double short_while = 3600;  // s on the bench, of a thin piece that is taken at once (common practice)

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Raw meat and fish, and what else feeds bacteria; butter, pastry and bread are let be.
bool is_looked_at(const Check& check, int step) {
  const flow::State& state = check.states().steps[at(step)];
  const bool flesh = state.has(food::Role::meat) || state.has(food::Role::fish);
  return flesh && needs_cold(check, step) == Need::yes;
}

/// A water warmer than the limit: by its figure, or by its words.
const StatedHeat* warm_water(const Check& check, int step, double most) {
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node))
    if (heat.el == El::medium_temp && heat.high && *heat.high > most + hair) return &heat;
  return nullptr;
}

bool taken_on(const Check& check, int step) {
  const auto& gives = check.flow.steps[at(step)].gives;
  return std::any_of(gives.begin(), gives.end(),
                     [&](int thing) { return !check.flow.things[at(thing)].uses.empty(); });
}

void look_at(Check& check, int step) {
  const SafetyLimit& water = safety_limit(check.kitchen, "thawing_water");
  const std::string& words = words_of(check, step);
  const base::Span where = check.document.head_span(check.flow.steps[at(step)].node);
  const std::string in_the_cold =
      "thaw it in the fridge, or under running water of " + degrees(water.celsius) + " at most";
  if (const StatedHeat* warm = warm_water(check, step, water.celsius)) {
    if (is_looked_at(check, step))
      say_limit(check, warm->statement->where,
                "it thaws in water at " + said(*warm) + "; water to thaw in runs, at " + degrees(water.celsius) +
                    " or less",
                water, in_the_cold);
    return;
  }
  if (says(words, {"warm water", "hot water", "lukewarm water", "eau chaude", "eau tiède", "warmem wasser",
                   "heißem wasser", "agua caliente"})) {
    if (is_looked_at(check, step))
      say_limit(check, where,
                "it thaws in warm water; water to thaw in runs, at " + degrees(water.celsius) + " or less", water,
                in_the_cold);
    return;
  }
  if (says(words, {"microwave", "micro-onde", "mikrowelle", "microondas"})) {
    if (taken_on(check, step) && !heated_next(check, step) && is_looked_at(check, step))
      say_limit(check, where,
                "it thaws in the microwave, and the next step does not cook it: its edges are warm by then",
                safety_limit(check.kitchen, "thawing_microwave"), "cook it at once, or thaw it in the fridge");
    return;
  }
  if (!stands_in_the_room(check, step) || !is_looked_at(check, step)) return;
  const flow::StepLength& length = check.times().lengths[at(step)];
  const auto longest = static_cast<double>(length.whole.most.value_or(length.whole.least));
  const double alone = safety_limit(check.kitchen, "time_alone").seconds;
  if (length.stated && (longest <= short_while || longest > alone)) return;  // longer is long-in-the-danger-zone's
  say_limit(check, where,
            "it thaws in the room: its outside is as warm as the room long before its middle has thawed",
            safety_limit(check.kitchen, "thawing_water"), in_the_cold);
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step)
    if (does(check, step, {"thaw"})) look_at(check, step);
}

}  // namespace

/// Meat and fish that thaw in warm water, in the room, or in a microwave and wait then.
const Rule thawed_too_warm = {
    .id = "thawed-too-warm",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "meat or fish that thaws in warm water, in the room, or in a microwave and waits then",
    .explanation =
        R"(What thaws is warm outside before it is soft inside, and bacteria grow there. It thaws in the fridge, under running
water of 21 °C at most, as part of its cooking, or in a microwave and is cooked at once (US model code).

Held against are steps that thaw meat and fish: the temperature of their water, warm water in words, a bench for more than an
hour, a microwave before a step that does not heat. A bench for longer than food may go without control is
long-in-the-danger-zone's. Butter, pastry and bread are let be. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="fish" food="cod" name="cod" at="-18 °C">1 kg</ingredient>
    <step do="thaw" makes="thawed" unattended="1 h">Thaw the <use of="fish">fish</use> in water at
      <medium-temp of="water">35 °C</medium-temp>.</step>
    <step do="fry" on="hob" hands="8 min">Fry the <use of="thawed">fish</use> to <food-temp place="core">63 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="fish" food="cod" name="cod" at="-18 °C">1 kg</ingredient>
    <step do="thaw" makes="thawed" unattended="1 h">Thaw the <use of="fish">fish</use> under running water at
      <medium-temp of="water">15 °C</medium-temp>.</step>
    <step do="fry" on="hob" hands="8 min">Fry the <use of="thawed">fish</use> to <food-temp place="core">63 °C</food-temp>.</step>)",
    .source = "FDA Food Code 3-501.13 (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
