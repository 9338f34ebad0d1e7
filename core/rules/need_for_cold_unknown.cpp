#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

void look_at(Check& check, const Kept& kept) {
  if (kept.holds || kept.store != Store::dry || !kept.length || keeps_otherwise(kept.words)) return;
  const SafetyLimit& alone = safety_limit(check.kitchen, "time_alone");
  const auto longest = kept.length->most.value_or(kept.length->least);
  if (static_cast<double>(longest) <= alone.seconds || needs_cold(check, kept.step) != Need::unknown) return;
  const std::string_view open = what_decides_cold(check, kept.step);
  if (open.empty()) return;
  say_limit(check, kept.time->where,
            "it stands " + time_words(longest) + " out of the cold; whether it needs it is not known: it hangs on " +
                std::string(open),
            alone, "measure its pH or water activity once and state it in a trial, or keep it cold");
}

void run(Check& check) {
  for (const Kept& kept : keeps_of(check)) look_at(check, kept);
}

}  // namespace

/// Food kept in the dry store of which nobody can tell whether it needs the cold: a question, not a fault.
const Rule need_for_cold_unknown = {
    .id = "need-for-cold-unknown",
    .severity = base::Severity::advice,
    .topic = "safety",
    .summary = "food kept out of the cold, and whether it needs it cannot be told from the fiche",
    .explanation =
        R"(Acid, sugar, salt, fat and drying keep food; how much of them is enough is measured, not guessed: below a pH of 4.2
or a water activity of 0.88, food needs no cold whatever it is made of; above both it hangs on the two together. Where
a filling between crumb, a curd, a pickle or something of a food that has no figures stands out of the cold for longer than
food that needs it may, this is a question to the author, not a fault.

Asked of is a keep in the dry store or the room for longer than the limit of time without temperature control. Nothing is
asked of closed jars, raw vegetables and dough, cakes, ganache and buttercream, nor of what a trial has measured. Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">400 g</ingredient>
    <ingredient id="juice" food="lemon-juice">60 g</ingredient>
    <ingredient id="sugar" food="sugar-white">60 g</ingredient>
    <step do="boil" makes="posset" hands="5 min">Boil the <use of="cream">cream</use> and the <use of="sugar">sugar</use> for
      <time>3 min</time>; stir in the <use of="juice">juice</use>.</step>
    <keep where="dry store" for="2 days"/>)",
    .good = R"(    <ingredient id="cream" food="cream-35">400 g</ingredient>
    <ingredient id="juice" food="lemon-juice">60 g</ingredient>
    <ingredient id="sugar" food="sugar-white">60 g</ingredient>
    <step do="boil" makes="posset" hands="5 min">Boil the <use of="cream">cream</use> and the <use of="sugar">sugar</use> for
      <time>3 min</time>; stir in the <use of="juice">juice</use>.</step>
    <keep where="fridge" at="at most 4 °C" for="2 days"/>)",
    .source = "FDA Food Code 1-201.10 (what needs temperature control) and 3-501.19, or the limits that the kitchen file chooses",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
