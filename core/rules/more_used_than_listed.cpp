#include <algorithm>

#include "core/rules/balance.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using Take = flow::Use::Take;

/// What is taken of a thing by statement: shares and amounts, beside one use.
struct Taken {
  double shares = 0;
  double grams = 0;
};

Taken taken_with(const Check& check, const flow::Thing& thing, const flow::Use& use) {
  Taken out;
  for (const int number : thing.uses) {
    const flow::Use& other = check.flow.uses[index_of(number)];
    if (&other != &use && !made_together(check.flow, use, other)) continue;
    if (other.take == Take::share && other.share) out.shares += other.share->approximate();
    if (other.take == Take::amount && other.grams) out.grams += other.grams->low;
  }
  return out;
}

void look_at(Check& check, const flow::Thing& thing) {
  for (const int number : thing.uses) {
    const flow::Use& use = check.flow.uses[index_of(number)];
    if (use.take != Take::share && use.take != Take::amount) continue;
    const Taken taken = taken_with(check, thing, use);
    if (taken.shares > 1.001 && taken.grams == 0) {
      check.say(place_of(check, use), "the steps take more of " + called(thing) + " than there is: shares of " +
                                          figure_text(100 * taken.shares, measure::Kind::count) + " %",
                "let the shares come to 1, or say \"the rest\" for the last");
      return;
    }
    if (taken.grams <= 0 || !thing.grams || thing.grams->high <= 0) continue;
    const double need = taken.grams + taken.shares * thing.grams->low;
    if (need <= thing.grams->high * (1 + weighing)) continue;
    base::Finding& finding =
        check.say(place_of(check, use), "the steps take " + figure_text(need, measure::Kind::mass) + " of " + called(thing) +
                                            ", and there are " + grams_text(*thing.grams),
                  "correct the amount that is wrong; what is divided must come to what is there");
    if (thing.ingredient >= 0) finding.related.push_back({check.document.head_span(thing.node), "listed here", {}, {}, {}});
    if (need > 1.5 * thing.grams->high) check.worsen(finding, base::Severity::error);
    return;
  }
}

void run(Check& check) {
  for (const flow::Thing& thing : check.flow.things) {
    if (thing.counts && thing.kind != flow::Thing::Kind::result) look_at(check, thing);
  }
}

}  // namespace

/// Stated takes of an ingredient, part or component over what it weighs.
const Rule more_used_than_listed = {
    .id = "more-used-than-listed",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "the steps take more of an ingredient than the list has",
    .explanation = R"(150 g of butter in the dough and 100 g for the crumble, and 200 g on the list: the second cook runs out in the middle.
Amounts and shares that steps state are added up and held against the line; 5 % more is let be. Steps of different
branches are not added, nor are those that are done only if something is so. From half as much again on it is an error.)",
    .bad = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <use of="sugar" take="150 g">150 g of sugar</use>.</step>
    <step>Whisk in <use of="sugar" take="100 g">100 g of sugar</use>.</step>)",
    .good = R"(    <ingredient id="sugar" food="sugar-white">250 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <use of="sugar" take="150 g">150 g of sugar</use>.</step>
    <step>Whisk in <use of="sugar" take="the rest">the rest of the sugar</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
