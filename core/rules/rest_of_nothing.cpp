#include <algorithm>

#include "core/rules/balance.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using Take = flow::Use::Take;

bool leaves_nothing(const Check& check, const flow::Thing& thing, const flow::Use& rest) {
  double shares = 0;
  double grams = 0;
  for (const int number : thing.uses) {
    const flow::Use& use = check.flow.uses[index_of(number)];
    if (&use == &rest || !made_together(check.flow, use, rest)) continue;
    if (use.take == Take::share && use.share) shares += use.share->approximate();
    if (use.take == Take::amount && use.grams) grams += use.grams->low;
  }
  if (shares > 0.999) return true;
  return thing.grams && grams > 0 && grams >= thing.grams->high * (1 - shares);
}

void run(Check& check) {
  for (const flow::Use& use : check.flow.uses) {
    if (use.take != Take::rest) continue;
    const flow::Thing& thing = check.flow.things[index_of(use.thing)];
    if (!thing.counts || !leaves_nothing(check, thing, use)) continue;
    check.say(place_of(check, use), "the rest of " + called(thing) + " is nothing: other steps take all of it",
              "make one of the others smaller, or leave this out");
  }
}

}  // namespace

/// A use of "the rest" beside stated takes that leave nothing.
const Rule rest_of_nothing = {
    .id = "rest-of-nothing",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "\"the rest\" of what is all taken",
    .explanation = R"(Two halves and the rest: the third cook looks into an empty bowl. The rule adds up the shares and amounts that other
steps state and speaks when they leave nothing.)",
    .bad = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <use of="sugar" take="half">half of the sugar</use>.</step>
    <step>Add the <use of="sugar" take="half">other half</use>.</step>
    <step>Dust with <use of="sugar" take="the rest">the rest</use>.</step>)",
    .good = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> with <use of="sugar" take="half">half of the sugar</use>.</step>
    <step>Add <use of="sugar" take="1/3">a third</use>.</step>
    <step>Dust with <use of="sugar" take="the rest">the rest</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
