#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/sentence.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

/// Something else holds it: fat or oil over it, no air, salt, acid, a culture.
bool is_held_otherwise(std::string_view words) {
  return says(words, {"fat",   "oil",       "vacuum",  "sealed",   "jar",     "brine",    "salt",
                      "cure",  "vinegar",   "pickle",  "fed",      "ferment", "steril",   "graisse",
                      "huile", "sous vide", "saumure", "vinaigre", "fett",    "öl",       "vakuum",
                      "lake",  "essig",     "grasa",   "aceite",   "vacío",   "salmuera", "vinagre"});
}

void look_at(Check& check, const Kept& kept) {
  if (kept.holds || kept.store != Store::fridge || !kept.length || is_held_otherwise(kept.words)) return;
  const SafetyLimit& limit = safety_limit(check.kitchen, "date_mark");
  const auto longest = kept.length->most.value_or(kept.length->least);
  if (static_cast<double>(longest) <= limit.seconds || needs_cold(check, kept.step) != Need::yes) return;
  say_limit(check, kept.time->where,
            "it is kept " + time_words(longest) + "; made ready to eat it is dated for " + time_of(limit) +
                " at most at " + degrees(limit.celsius),
            limit, "date it for " + time_of(limit) + ", freeze what is to keep longer, or say what else holds it");
}

void run(Check& check) {
  for (const Kept& kept : keeps_of(check)) look_at(check, kept);
}

}  // namespace

/// Food kept in the fridge for longer than date marking allows.
const Rule kept_beyond_its_date = {
    .id = "kept-beyond-its-date",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "food kept in the fridge for longer than published date marking allows",
    .explanation =
        R"(Listeria grows in the fridge, only slowly: what is ready to eat and needs the cold is dated for seven days at
5 °C by the US model code, the day it is made counted as the first; three days after it is common practice in France where no
study allows more.

Held against is the time of a keep in the fridge, for food that is moist and not acid by what the fiche lets us know. Nothing
is said where the words name what else holds it: fat over it, a vacuum, salt, acid. Local rules and licensed persons
decide.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="sugar" food="sugar-white">40 g</ingredient>
    <step do="boil" makes="boiled" hands="5 min">Boil the <use of="cream">cream</use> with the
      <use of="sugar">sugar</use>.</step>
    <keep where="fridge" at="at most 4 °C" for="3 weeks"/>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="sugar" food="sugar-white">40 g</ingredient>
    <step do="boil" makes="boiled" hands="5 min">Boil the <use of="cream">cream</use> with the
      <use of="sugar">sugar</use>.</step>
    <keep where="fridge" at="at most 4 °C" for="3 days"/>)",
    .source = "FDA Food Code 3-501.17, or the limits that the kitchen file chooses (core/rules/safety_limits.inc)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
