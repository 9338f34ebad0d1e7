#include <algorithm>

#include "core/rules/balance.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using Take = flow::Use::Take;

void look_at(Check& check, const flow::Thing& thing) {
  if (thing.uses.empty() || !thing.grams || thing.optional) return;
  double most = 0;
  for (const int number : thing.uses) {
    const flow::Use& use = check.flow.uses[index_of(number)];
    const flow::Step& step = check.flow.steps[index_of(use.step)];
    const bool stated = use.take == Take::share || use.take == Take::amount;
    if (!stated || step.optional || !step.branch.empty() || use.instead) return;
    if (check.document.find(step.node, fiche::At::repeat) != fiche::none) return;
    if (says(words_around(check.document, step.node), {"rest", "remain", "keep", "reste", "resto", "übrig"})) return;
    if (use.take == Take::share) {
      most += use.share->approximate() * thing.grams->high;
    } else if (use.grams) {
      most += use.grams->high;
    } else {
      return;
    }
  }
  if (most >= thing.grams->low * (1 - 2 * weighing)) return;
  const flow::Use& last = check.flow.uses[index_of(thing.uses.back())];
  check.say(check.document.head_span(thing.node),
            "the steps take " + figure_text(most, measure::Kind::mass) + " of " + called(thing) + ", and " +
                grams_text(*thing.grams) + " are listed",
            "say where the rest goes (take=\"the rest\"), or list what is used")
      .related.push_back({place_of(check, last), "the last that is taken", {}, {}, {}});
}

void run(Check& check) {
  for (const flow::Thing& thing : check.flow.things) {
    if (thing.counts && thing.kind == flow::Thing::Kind::ingredient && is_marked(check.flow, thing.component)) {
      look_at(check, thing);
    }
  }
}

}  // namespace

/// Stated takes of an ingredient that leave a part of it.
const Rule less_used_than_listed = {
    .id = "less-used-than-listed",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "the steps take less of an ingredient than the list has",
    .explanation = R"(Half of the sugar goes in with the yolks, and the other half is never heard of again. The rule speaks where every step
that takes of an ingredient says how much, and together they leave more than 10 % of it. Optional steps, branches and
repeated steps are let be, and so are sentences that speak of a rest.)",
    .bad = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <use of="sugar" take="half">half of the sugar</use>.</step>)",
    .good = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <use of="sugar" take="half">half of the sugar</use>.</step>
    <step>Add <use of="sugar" take="the rest">the rest</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
