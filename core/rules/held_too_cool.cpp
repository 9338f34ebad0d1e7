#include "core/rules/contents.h"
#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"

namespace tamis::rules {
namespace {

constexpr double hair = 0.5;  // °C: rounding of one scale to the other

/// Roasts of beef and lamb, whole: they may be held at what they are cooked to.
bool is_roast(const Check& check, int step) {
  bool red = false;
  for (const Part& part : contents_of(check, step).parts) {
    if (part.food == nullptr || part.food->role != food::Role::meat) continue;
    const std::string_view id = general_id(check, part.food);
    if (id.find("minced") != std::string_view::npos ||
        !(id.starts_with("beef") || id.starts_with("lamb") || id.starts_with("veal")))
      return false;
    red = true;
  }
  return red;
}

const SafetyLimit& limit_of(const Check& check, int step) {
  const bool by_us = check.kitchen.limits.empty() || check.kitchen.limits == "us";
  return safety_limit(check.kitchen, by_us && is_roast(check, step) ? "hot_roasts" : "hot_holding");
}

void look_at(Check& check, const Kept& kept) {
  if (kept.store != Store::hot || kept.heat == nullptr || !kept.low) return;
  const SafetyLimit& limit = limit_of(check, kept.step);
  if (*kept.low >= limit.celsius - hair) return;
  if (needs_cold(check, kept.step) != Need::yes) return;
  const SafetyLimit& alone = safety_limit(check.kitchen, "hot_tolerance");
  const bool short_time =
      kept.length && kept.length->most && static_cast<double>(*kept.length->most) <= alone.seconds;
  if (short_time && says_thrown_away(kept.words)) return;
  say_limit(check, kept.heat->where,
            "it is held at " + (kept.high ? said_heat(*kept.heat) : degrees(*kept.low)) + "; hot holding is at " +
                degrees(limit.celsius) + " or more",
            limit,
            "hold it hotter, or for " + time_of(alone) + " at most and throw away what is left, and say so");
}

void run(Check& check) {
  for (const Kept& kept : keeps_of(check)) look_at(check, kept);
}

}  // namespace

/// Food that is kept hot below the published limit.
const Rule held_too_cool = {
    .id = "held-too-cool",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "food kept hot at less than the published limit of hot holding",
    .explanation =
        R"(What survives cooking as spores grows again in food that stands lukewarm. The published limits of hot holding
lie at 57 °C (US model code), 60 °C (Ontario, Australia) and 63 °C (UK, France); the kitchen file says whose the house works to
(limits). Roasts of beef and lamb may be held at 54 °C by the US code.

Held against are the temperature of a keep that stands hot and of a step that holds, of food that needs it: not syrup,
chocolate or caramel, nor what nobody can tell. Where it is held for no longer than hot food may go without control (four hours;
two in the UK and Ontario), and thrown away then, nothing is said. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
    <step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>,
      stirring.</step>
    <keep where="water bath" at="50 °C" for="6 h"/>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
    <step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>,
      stirring.</step>
    <keep where="water bath" at="60–65 °C" for="2 h"/>)",
    .source =
        "FDA Food Code 3-501.16 and 3-501.19, or the limits that the kitchen file chooses "
        "(core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
