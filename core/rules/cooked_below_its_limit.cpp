#include <algorithm>

#include "core/flow/stated_time.h"
#include "core/rules/contents.h"
#include "core/rules/cook_limit.h"
#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double carry_over = 3;  // K that a piece lifted out goes on rising by, at least (common practice)
constexpr double stays = 30;      // s that a core stays where it has come to, at least (common practice)
constexpr double bath = 2;        // K: a bath no warmer than that round its food holds it there

/// How long the step holds its food there: as the mark says, or the time in a bath of that temperature.
double held_in(const Check& check, int step, const StatedHeat& heat, double celsius) {
  double seconds = stays;
  if (const fiche::Statement* held = check.fiche.statement(heat.statement->node, fiche::At::for_)) {
    if (const auto time = flow::time_meant(*held, check.kitchen))
      seconds = static_cast<double>(time->least);
  }
  const fiche::Node node = check.flow.steps[at(step)].node;
  const std::vector<StatedHeat>& all = stated_heats(check, node);
  const bool in_bath = std::any_of(all.begin(), all.end(), [&](const StatedHeat& one) {
    return one.el == fiche::El::medium_temp && one.high && *one.high <= celsius + bath;
  });
  const bool no_other =
      std::none_of(all.begin(), all.end(), [](const StatedHeat& one) { return one.el != fiche::El::food_temp; });
  const bool poached =
      does(check, step, {"poach", "cook", "hold", "pasteurise", "pasteurize", "simmer", "confit"});
  if (in_bath || (no_other && poached))
    seconds = std::max(seconds, static_cast<double>(check.times().lengths[at(step)].whole.least));
  return seconds;
}

/// The last temperature of the food itself in the step; null where there is none.
const StatedHeat* core_of(const Check& check, int step) {
  const StatedHeat* found = nullptr;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    if (heat.el != fiche::El::food_temp || !(heat.low || heat.high)) continue;
    if (check.document.get(heat.statement->node, fiche::At::place) != "surface") found = &heat;
  }
  return found;
}

/// A step behind it that waits or states how warm it comes to goes on cooking by the heat that is there.
bool rests_after(const Check& check, int step) {
  return std::any_of(check.flow.uses.begin(), check.flow.uses.end(), [&](const flow::Use& use) {
    return use.step != step && check.flow.things[at(use.thing)].maker == step &&
           does(check, use.step, {"rest", "stand", "hold"});
  });
}

void look_at(Check& check, int step) {
  const StatedHeat* core = core_of(check, step);
  if (core == nullptr || !heats(check, step)) return;
  const double celsius = core->low.value_or(core->high.value_or(0));
  if (celsius >= 75 || heated_later(check, step)) return;
  const auto limit = cook_limit_of(check, step);
  if (!limit || says_undercooked(cautions_of(check))) return;
  const double comes_to = celsius + (rests_after(check, step) ? carry_over : 0);
  if (meets(limit->pairs, comes_to, held_in(check, step, *core, celsius))) return;
  say_limit(
      check, core->statement->where,
      std::string(limit->food) + " is cooked to " + said_heat(*core->statement) + "; published is " +
          asked(limit->pairs, celsius),
      celsius < limit->pairs.front().celsius || limit->pairs.size() == 1 ? limit->pairs.back() : limit->pairs.front(),
      "cook it on, say how long it is held there (for), or, where it is served so, say it in a caution");
}

void run(Check& check) {
  if (!lists(check, food::Role::meat)) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Poultry or minced meat cooked to less than the published pairs of temperature and time.
const Rule cooked_below_its_limit = {
    .id = "cooked-below-its-limit",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "poultry or minced meat cooked to less than published temperatures and times",
    .explanation =
        R"(Heat kills by degrees and by time: for poultry 74 °C at once, 68.3 °C for 72 s or 60 °C for 28 min bring the same;
for minced meat 70 °C at once, 66 °C for a minute, 63 °C for three (US figures; UK: 75 °C for 30 s, 65 °C for ten
minutes). Mince has its surface inside, so that rare does not stop at the crust.

Held against is the last temperature of the food in a step that heats raw poultry or mince, where no later step heats it
again, of a range its lower end, with the time that it is held (for, or the time in a bath of that temperature; half a
minute where nothing is said) and 3 K for what rests. Where a caution says that it is served pink or who is not to eat it, nothing is said. Whole cuts, fish and
eggs are cooked as guests wish, and asked for a caution elsewhere. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="breast" food="chicken-breast">1 kg</ingredient>
    <step do="roast" on="oven-1">Roast the <use of="breast">breasts</use> at <oven-temp mode="fan">180 °C</oven-temp> to
      a core of
      <food-temp place="core">58 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="breast" food="chicken-breast">1 kg</ingredient>
    <step do="roast" on="oven-1">Roast the <use of="breast">breasts</use> at <oven-temp mode="fan">180 °C</oven-temp> to
      a core of
      <food-temp place="core">74 °C</food-temp>.</step>)",
    .source =
        "FDA Food Code 3-401.11 and FSIS tables, or the limits that the kitchen file chooses "
        "(core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
