#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

void look_at(Check& check, const Kept& kept) {
  if (kept.store != Store::dry || !kept.length || keeps_otherwise(kept.words)) return;
  const SafetyLimit& alone = safety_limit(check.kitchen, "time_alone");
  const auto longest = kept.length->most.value_or(kept.length->least);
  if (static_cast<double>(longest) <= alone.seconds || needs_cold(check, kept.step) != Need::yes) return;
  say_limit(
      check, kept.time->where,
      "it stands " + time_words(longest) + " out of the cold; food that needs it is out for " + time_of(alone) +
          " at most",
      alone,
      "keep it cold, or say what else keeps it: its pH or water activity measured in a trial, a closed jar");
}

void run(Check& check) {
  for (const Kept& kept : keeps_of(check)) look_at(check, kept);
}

}  // namespace

/// Food that needs the cold, kept in the dry store.
const Rule kept_out_of_the_cold = {
    .id = "kept-out-of-the-cold",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "food that needs the cold, kept without it for longer than published limits allow",
    .explanation =
        R"(Custard, stock, cooked meat, cooked pulses and garlic under oil feed bacteria. Without temperature control they
are out for four hours at most (US model code, UK, Australia) or two (Ontario), and thrown away then.

Held against is the time of a keep in the dry store or the room, for food that is moist and not acid by what the fiche lets
us know. What is dry, sweet (water activity below 0.88) or baked through needs no cold, nor what a trial has measured a pH
below 4.2 or such a water activity of; of what nobody can tell nothing is said, nor of closed jars, cures and brines. Local
rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="sugar" food="sugar-white">40 g</ingredient>
    <step do="whip" makes="whipped" hands="5 min">Whip the <use of="cream">cream</use> with the
      <use of="sugar">sugar</use>.</step>
    <keep where="dry store" for="2 days"/>)",
    .good = R"(    <ingredient id="cream" food="cream-35">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">400 g</ingredient>
    <step do="caramelise" makes="caramel" hands="5 min">Cook the <use of="cream">cream</use> and the
      <use of="sugar">sugar</use> to
      <food-temp>120 °C</food-temp>.</step>
    <keep where="dry store" for="2 days"/>)",
    .source = "FDA Food Code 3-501.19, or the limits that the kitchen file chooses (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
