#include <algorithm>

#include "core/rules/gate_steps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/sentence.h"
#include "core/rules/standing.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using food::Role;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double kills_at = 70;      // °C, all of it
constexpr double until_warm = 3600;  // s that a hot pot takes to come down to the warm (common practice)
constexpr double room_least = 12;    // °C

/// Cultures, yeast, cures and the like work in the warm on purpose.
bool is_meant(const Check& check, int step) {
  return check.states().steps[at(step)].has(Role::yeast) ||
         does(check, step,
              {"ferment", "proof", "prove", "cure", "dry", "pickle", "smoke", "mature", "age", "ripen", "churn",
               "freeze"}) ||
         says(words_of(check, step), {"ferment", "culture", "sour", "levain", "cure", "brine"});
}

/// How long the food is surely in the zone while the step goes on, in s.
double stay_of(const Check& check, int step) {
  const auto least = static_cast<double>(check.times().lengths[at(step)].whole.least);
  if (least <= 0 || is_meant(check, step) || !stands_in_the_room(check, step)) return 0;
  const flow::State& after = check.states().steps[at(step)];
  const double hot = safety_limit(check.kitchen, "hot_holding").celsius;
  if (after.celsius.high < room_least || after.celsius.low >= hot || needs_cold(check, step) != Need::yes)
    return 0;
  bool was_hot = false;
  for (const int use : check.flow.steps[at(step)].takes) {
    was_hot = was_hot || check.states().uses[at(use)].celsius.high >= hot;
  }
  return std::max(0.0, was_hot ? least - until_warm : least);
}

/// Toxin that is there stays there, whatever heat comes after.
bool makes_toxin(const flow::State& state) {
  return state.has(Role::starch) || state.has(Role::flour) || state.has(Role::dairy) || state.has(Role::egg) ||
         state.has(Role::other);
}

void run(Check& check) {
  if (check.fiche.steps.empty()) return;
  const SafetyLimit& limit = safety_limit(check.kitchen, "time_alone");
  // Only steps that stand for long can add up to it: most fiches need no states worked out.
  const bool long_stay = std::any_of(check.times().lengths.begin(), check.times().lengths.end(),
                                     [](const flow::StepLength& length) { return length.whole.least >= 3600; });
  if (!long_stay) return;
  std::vector<double> stayed(check.flow.steps.size(), 0);
  std::vector<std::vector<int>> where(check.flow.steps.size());
  for (const int step : check.flow.order) {
    for (const int use : check.flow.steps[at(step)].takes) {
      const int maker = check.flow.things[at(check.flow.uses[at(use)].thing)].maker;
      if (maker < 0 || stayed[at(maker)] <= stayed[at(step)]) continue;
      stayed[at(step)] = stayed[at(maker)];
      where[at(step)] = where[at(maker)];
    }
    const flow::State& state = check.states().steps[at(step)];
    if (stayed[at(step)] > 0 && std::max(state.celsius.low, state.heat.celsius) >= kills_at &&
        heats(check, step) && !makes_toxin(state)) {
      stayed[at(step)] = 0;
      where[at(step)].clear();
    }
    const double own = stay_of(check, step);
    if (own <= 0) continue;
    stayed[at(step)] += own;
    where[at(step)].push_back(step);
    if (stayed[at(step)] <= limit.seconds) continue;
    const std::string zone = degrees(safety_limit(check.kitchen, "cold_holding").celsius) + " and " +
                             degrees(safety_limit(check.kitchen, "hot_holding").celsius);
    base::Finding& finding =
        say_limit(check, check.document.head_span(check.flow.steps[at(step)].node),
                  "it stands at least " + time_words(static_cast<flow::TimeNetwork::Seconds>(stayed[at(step)])) +
                      " between " + zone + (where[at(step)].size() > 1 ? " by now" : "") +
                      "; food that needs the cold may stand there for " + time_of(limit) + " in all",
                  limit, "cool it in shallow pans, on ice or in the chiller, or throw away what has stood longer");
    for (const int before : where[at(step)]) {
      if (before == step) continue;
      finding.related.push_back(
          {check.document.head_span(check.flow.steps[at(before)].node), "stands here too", {}, {}, {}});
    }
    return;
  }
}

}  // namespace

/// Food that stands between cold and hot for longer than published limits allow, all its steps together.
const Rule long_in_the_danger_zone = {
    .id = "long-in-the-danger-zone",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "food that stands in the warm for longer than published limits allow, steps together",
    .explanation =
        R"(Each wait is short, and together they are a night: between 5 and 57 °C bacteria double in as little as twenty
minutes. Published limits let food that needs the cold be there for four hours in all without control.

Added up along the way of the food is the least time of steps in which it stands in the room: on the bench, at room
temperature, with nothing cold said. What is put out hot has an hour to come down. A step that heats all of it to 70 °C begins
the sum again, but not for what has flour, starch, pulses, egg or dairy in it: their toxins stay. Yeast, cultures and cures are
let be, as is what needs no cold or may not, for all that can be known. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="wings" food="chicken-wing">2 kg</ingredient>
    <ingredient id="water" food="water">4 l</ingredient>
    <step do="simmer" makes="stock" hands="10 min" unattended="4 h">Simmer the <use of="wings">wings</use> in the
      <use of="water">water</use> at <food-temp>95 °C</food-temp> for <time>4 h</time>.</step>
    <step do="cool" on="bench" unattended="9 h">Leave the <use of="stock">stock</use> on the bench for <time>9
      h</time>.</step>)",
    .good = R"(    <ingredient id="wings" food="chicken-wing">2 kg</ingredient>
    <ingredient id="water" food="water">4 l</ingredient>
    <step do="simmer" makes="stock" hands="10 min" unattended="4 h">Simmer the <use of="wings">wings</use> in the
      <use of="water">water</use> at <food-temp>95 °C</food-temp> for <time>4 h</time>.</step>
    <step do="cool" on="bench" unattended="1 h">Leave the <use of="stock">stock</use> on the bench for <time>1
      h</time>.</step>)",
    .source = "FDA Food Code 3-501.19, or the limits that the kitchen file chooses (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
