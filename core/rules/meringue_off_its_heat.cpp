#include <algorithm>

#include "core/physics/boiling_point.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::El;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double margin = 5;   // K: both are worked a little lower and higher
constexpr double colder = 15;  // K: some warm whites and sugar to 45 or 50 °C only

bool is_swiss(const Check& check, int step) {
  return is_called(check, step,
                   {"swiss meringue", "meringue suisse", "schweizer baiser", "schweizer meringue", "merengue suizo"});
}

bool is_italian(const Check& check, int step) {
  return is_called(
      check, step,
      {"italian meringue", "meringue italienne", "italienische meringue", "italienisches baiser", "merengue italiano"});
}

/// Or where a step that takes what this one makes is called so.
bool makes_italian(const Check& check, int step) {
  if (is_italian(check, step)) return true;
  return std::any_of(check.flow.uses.begin(), check.flow.uses.end(), [&](const flow::Use& use) {
    return check.flow.things[at(use.thing)].maker == step && is_italian(check, use.step);
  });
}

/// What syrup and water boil lower by at the kitchen's height.
double lower_here(const Check& check) {
  const auto& height = check.kitchen.altitude_m;
  return height ? physics::boiling_point(0) - physics::boiling_point(height->approximate()) : 0;
}

void look_at_swiss(Check& check, const StatedHeat& heat) {
  const TradeFigure& usual = figures::swiss_meringue;
  if (*heat.low > usual.high + margin) {
    check.say(heat.statement->where,
              "for a Swiss meringue white and sugar are warmed to " + text_of(usual) + ", and this says " + said(heat),
              "take them off the bath at 65 °C: above 75 °C the white sets at the edge");
  } else if (*heat.high < usual.low - colder) {
    check.say(heat.statement->where,
              "for a Swiss meringue white and sugar are warmed to " + text_of(usual) + ", and this says " + said(heat),
              "warm them until the sugar has gone, 60 °C: colder it does not dissolve and the meringue weeps");
  }
}

void look_at_syrup(Check& check, const StatedHeat& heat) {
  const TradeFigure& usual = figures::italian_syrup;
  const bool cold = *heat.high < usual.low - margin - lower_here(check);
  if (!cold && *heat.low <= usual.high + margin) return;
  check.say(heat.statement->where,
            "the syrup of an Italian meringue is poured at " + text_of(usual) + ", and this says " + said(heat),
            cold ? "boil it to 118 °C: thinner, it brings water that weeps out again"
                 : "stop it at 121 °C: hotter, it sets to threads in the bowl");
}

/// Syrup: at the boil and above, where it goes to the whites.
bool is_syrup_figure(const Check& check, const StatedHeat& heat, unsigned kinds) {
  if (*heat.high < 100 - lower_here(check) || *heat.low > 150) return false;
  return says_sugar_or_fat(heat.before) || check.document.get(heat.statement->node, fiche::At::of) == "syrup" ||
         (kinds & ~(kind::sugar | kind::plain | kind::white)) == 0;
}

void look_at(Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  const auto& heats = stated_heats(check, check.flow.steps[at(step)].node);
  if (heats.empty() || (kinds & kind::sugar) == 0 || (kinds & kind::yolk) != 0) return;
  const bool swiss = (kinds & kind::white) != 0 && is_swiss(check, step), italian = makes_italian(check, step);
  if (swiss == italian) return;
  for (const StatedHeat& heat : heats) {
    if (heat.el != El::food_temp || !heat.low || !heat.high || says_cooling(heat.before)) continue;
    if (swiss && rules::heats(check, step) && *heat.high >= 30) look_at_swiss(check, heat);
    if (swiss && does(check, step, {"whisk", "whip"}) && !rules::heats(check, step) && *heat.low > 40)
      look_at_swiss(check, heat);
    if (italian && is_syrup_figure(check, heat, kinds)) look_at_syrup(check, heat);
  }
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::white) == 0 || (food_kinds(check).all & kind::sugar) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// An Italian meringue with a syrup at 148 °C.
const Rule meringue_off_its_heat = {
    .id = "meringue-off-its-heat",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a Swiss or Italian meringue warmed or boiled to another figure than it takes",
    .explanation = R"(For a Swiss meringue white and sugar are warmed together to 60 to 71 °C, then beaten cold; for
an Italian one a syrup at 115 to 121 °C is poured onto white that is being whipped, and cooks it. Thin syrup brings
water that weeps out, hot syrup sets to threads.

Only where the recipe itself, its component or step calls it Swiss or Italian (en, fr, de, es). With 5 K to spare, 15
on the cold side of the Swiss, which some warm to 45 or 50 °C; high up, the syrup is that much colder. Boiling syrup
burns deeply.)",
    .bad = R"(    <ingredient id="whites" food="egg-white">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="water" food="water">60 g</ingredient>
    <step do="boil" on="hob" makes="syrup">For the Italian meringue boil the <use of="sugar">sugar</use> and
      <use of="water">water</use> to a syrup of <food-temp>148 °C</food-temp>.</step>
    <step do="whip">Pour the <use of="syrup">syrup</use> onto the <use of="whites">whites</use> in a thin stream, whipping.</step>)",
    .good = R"(    <ingredient id="whites" food="egg-white">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="water" food="water">60 g</ingredient>
    <step do="boil" on="hob" makes="syrup">For the Italian meringue boil the <use of="sugar">sugar</use> and
      <use of="water">water</use> to a syrup of <food-temp>118 °C</food-temp>.</step>
    <step do="whip">Pour the <use of="syrup">syrup</use> onto the <use of="whites">whites</use> in a thin stream, whipping.</step>)",
    .source = "common practice: Swiss 60 to 71 °C, Italian syrup 115 to 121 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
