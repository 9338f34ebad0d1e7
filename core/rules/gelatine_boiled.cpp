#include "core/flow/stated_time.h"
#include "core/rules/figure_text.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/soaking.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool says_boiling(std::string_view words) {
  return says(words, {"boil", "simmer", "reduce", "bouill", "ébullition", "mijot", "rédui", "koch", "köchel", "hervir", "hierv",
                      "reducir"});
}

constexpr fiche::Node from_the_start = 0;  // before every mark of the step

struct Gelatine {
  bool in = false;
  fiche::Node mark = from_the_start;
};

Gelatine gelatine_in(const Check& check, int step) {
  Gelatine out;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if ((food_kinds(check).things[at(use.thing)] & kind::any_gelatine) == 0 || !is_told(use)) continue;
    // Soaked there, and put in later.
    if (check.flow.things[at(use.thing)].maker < 0 && says_soaked(words_of(check, step))) continue;
    out.in = true;
    out.mark = use.mark == fiche::none ? from_the_start : use.mark;
  }
  return out;
}

void look_at(Check& check, int step) {
  if ((food_kinds(check).steps[at(step)] & kind::any_gelatine) == 0) return;
  const Gelatine gelatine = gelatine_in(check, step);
  if (!gelatine.in || !boils(check, step)) return;
  const double longest = figures::gelatine_boils.high * 60;
  for (const flow::TimeMark& time : flow::time_marks(check.fiche, check.flow.steps[at(step)].node)) {
    const bool boiling = time.role == flow::TimeMark::Role::length && static_cast<double>(time.range.least) > longest;
    if (!boiling || time.statement->node < gelatine.mark || !says_boiling(words_before(check.document, time.statement->node)))
      continue;
    check.say(time.statement->where,
              "the gelatine is in it and boils for " + time.statement->text + ": boiled longer than " +
                  text_of(figures::gelatine_boils) + " it loses strength",
              "boil first, and stir the soaked gelatine in off the heat");
    return;
  }
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::any_gelatine) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Gelatine in a glaze that boils for ten minutes.
const Rule gelatine_boiled = {
    .id = "gelatine-boiled",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "gelatine that is boiled for minutes, and sets the weaker for it",
    .explanation = R"(Heat takes gelatine apart: brought to the boil it is as good as new, boiled on for minutes it
sets weaker, in acid the faster. A just-boiled liquid off the heat is the right place to dissolve it.

Said where the gelatine is in before the boil, and the recipe says for how long it boils.)",
    .bad = R"(    <ingredient id="juice" food="apple-juice">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" prep="soaked, wrung out">10 g</ingredient>
    <step do="boil" on="hob">Stir the <use of="leaf">gelatine</use> into the <use of="juice">juice</use> and boil for
      <time>10 to 12 min</time>.</step>)",
    .good = R"(    <ingredient id="juice" food="apple-juice">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" prep="soaked, wrung out">10 g</ingredient>
    <step do="boil" on="hob">Boil the <use of="juice">juice</use> for <time>10 to 12 min</time>; off the heat stir in the
      <use of="leaf">gelatine</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
