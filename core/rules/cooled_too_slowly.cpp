#include <algorithm>

#include "core/rules/cooling_stages.h"
#include "core/rules/gate_steps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hair = 0.5;      // °C: rounding of one scale to the other
constexpr double room_most = 30;  // °C: what is that warm at most has not been heated

/// Whether nothing that goes in has been hot: mixed of what comes from fridge and room.
bool starts_cool(const Check& check, int step) {
  const auto& takes = check.flow.steps[at(step)].takes;
  return !takes.empty() && std::all_of(takes.begin(), takes.end(), [&](int use) {
    const flow::State& state = check.states().uses[at(use)];
    return state.celsius.high <= room_most && state.heat.celsius <= room_most;
  });
}

/// The limit that a stage passes; null when none.
const SafetyLimit* passed(const Check& check, int step, const CoolingStage& stage) {
  const SafetyLimit& first = safety_limit(check.kitchen, "cooling_first");
  const SafetyLimit& whole =
      safety_limit(check.kitchen, starts_cool(check, step) ? "cooling_from_room" : "cooling_whole");
  const bool is_first = stage.celsius <= first.celsius + hair && (first.celsius <= 10 || stage.celsius > 10);
  if (is_first && stage.seconds > first.seconds) return &first;
  return stage.celsius <= first.celsius + hair && stage.seconds > whole.seconds ? &whole : nullptr;
}

void look_at(Check& check, int step, fiche::Node in) {
  for (const CoolingStage& stage : cooling_stages(check, in)) {
    const SafetyLimit* limit = passed(check, step, stage);
    if (limit == nullptr || needs_cold(check, step) != Need::yes) continue;
    const bool from_room = limit->name == "cooling_from_room";
    const std::string starts = degrees(safety_limit(check.kitchen, "cooling_starts").celsius);
    say_limit(check, stage.time->where,
              "it may take " + time_words(static_cast<flow::TimeNetwork::Seconds>(stage.seconds)) + " to " +
                  degrees(stage.celsius) + "; food cools " + (from_room ? "from the room" : "from " + starts) +
                  " to " + degrees(limit->celsius) + " in " + time_of(*limit) +
                  (limit->name == "cooling_whole" ? " in all" : ""),
              *limit, "shallower pans, ice or a chiller, and " + time_of(*limit) + " as the limit");
    return;
  }
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    const fiche::Node node = check.flow.steps[at(step)].node;
    if (check.document.child(node, fiche::El::food_temp) != fiche::none) look_at(check, step, node);
    for (fiche::Node c = check.document.first_child(node); c != fiche::none; c = check.document.next(c)) {
      if (check.document.el(c) == fiche::El::control) look_at(check, step, c);
    }
  }
}

}  // namespace

/// Food that is given longer to cool than published limits allow.
const Rule cooled_too_slowly = {
    .id = "cooled-too-slowly",
    .severity = base::Severity::error,
    .topic = "safety",
    .summary = "food that is given longer to cool than published limits allow",
    .explanation =
        R"(What survives cooking as spores grows fastest while a pot cools through the warm. The US model code allows two
hours from 57 to 21 °C and six in all to 5 °C, four for what is mixed at the room's temperature; Australia and Ontario nearly
the same, France two hours from 63 to 10 °C. The kitchen file says whose limits the house works to (limits).

Held against are the times by which a step or its control point must have cooled food that needs it ("to 21 °C within 2 h and
to 5 °C within 4 h more"). How long it takes to cool in a given pan is another matter. Local rules and licensed persons
decide.)",
    .bad = R"(    <ingredient id="wings" food="chicken-wing">2 kg</ingredient>
    <ingredient id="water" food="water">4 l</ingredient>
    <step do="simmer" makes="stock" hands="10 min" unattended="4 h">Simmer the <use of="wings">wings</use> in the
      <use of="water">water</use> at <food-temp>95 °C</food-temp> for <time>4 h</time>.</step>
    <step do="cool">Cool the <use of="stock">stock</use>.<control hazard="growth" check="probe" often="each pan" who="the cook"
      action="discard">From <food-temp>57 °C</food-temp> to <food-temp>21 °C</food-temp> within <time>5
      h</time>.</control></step>)",
    .good = R"(    <ingredient id="wings" food="chicken-wing">2 kg</ingredient>
    <ingredient id="water" food="water">4 l</ingredient>
    <step do="simmer" makes="stock" hands="10 min" unattended="4 h">Simmer the <use of="wings">wings</use> in the
      <use of="water">water</use> at <food-temp>95 °C</food-temp> for <time>4 h</time>.</step>
    <step do="cool">Cool the <use of="stock">stock</use>.<control hazard="growth" check="probe" often="each pan" who="the cook"
      action="discard">From <food-temp>57 °C</food-temp> to <food-temp>21 °C</food-temp> within <time>2
      h</time>.</control></step>)",
    .source = "FDA Food Code 3-501.14, or the limits that the kitchen file chooses (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
