#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"

namespace tamis::rules {
namespace {

constexpr double hair = 0.5;  // °C: rounding of one scale to the other

void look_at(Check& check, const Kept& kept) {
  if (kept.store != Store::fridge || kept.heat == nullptr || !kept.high) return;
  const SafetyLimit& limit = safety_limit(check.kitchen, "cold_holding");
  if (*kept.high <= limit.celsius + hair || needs_cold(check, kept.step) != Need::yes) return;
  const SafetyLimit& alone = safety_limit(check.kitchen, "time_alone_cool");
  const bool cool = *kept.high <= alone.celsius;
  const bool short_time =
      kept.length && kept.length->most && static_cast<double>(*kept.length->most) <= alone.seconds;
  if (cool && short_time && (kept.holds || says_thrown_away(kept.words))) return;
  say_limit(
      check, kept.heat->where,
      "it is kept at up to " + degrees(*kept.high) + "; cold holding is at " + degrees(limit.celsius) + " at most",
      limit, "keep it at " + degrees(limit.celsius) + " or colder");
}

void run(Check& check) {
  for (const Kept& kept : keeps_of(check)) look_at(check, kept);
}

}  // namespace

/// Food that is kept cold above the published limit.
const Rule kept_too_warm = {
    .id = "kept-too-warm",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "food kept in the cold at more than the published limit of cold holding",
    .explanation =
        R"(At 10 °C a custard spoils in a third of the time that it has at 4 °C, and what makes people ill grows with it.
The published limits of cold holding lie at 4 °C (France, Ontario), 5 °C (US model code, Australia) and 8 °C (UK); the kitchen
file says whose the house works to (limits).

Held against is the highest temperature that a keep, or a step that holds, allows for food that needs the cold. What is dry,
sweet, sour or baked through, and what nobody can tell, is let be; so is what is out for a few hours at 21 °C at most and
thrown away then. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="sugar" food="sugar-white">40 g</ingredient>
    <step do="whip" makes="whipped" hands="5 min">Whip the <use of="cream">cream</use> with the
      <use of="sugar">sugar</use>.</step>
    <keep where="fridge" at="at most 11 °C" for="1 day"/>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="sugar" food="sugar-white">40 g</ingredient>
    <step do="whip" makes="whipped" hands="5 min">Whip the <use of="cream">cream</use> with the
      <use of="sugar">sugar</use>.</step>
    <keep where="fridge" at="at most 4 °C" for="1 day"/>)",
    .source = "FDA Food Code 3-501.16, or the limits that the kitchen file chooses (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
