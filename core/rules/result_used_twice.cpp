#include <algorithm>

#include "core/rules/balance.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using Take = flow::Use::Take;

double stated_with(const Check& check, const flow::Thing& thing, const flow::Use& use) {
  double shares = 0;
  for (const int number : thing.uses) {
    const flow::Use& other = check.flow.uses[index_of(number)];
    if (&other != &use && !made_together(check.flow, use, other)) continue;
    if (other.take == Take::share && other.share) shares += other.share->approximate();
    if (other.take == Take::amount && other.grams && thing.grams && thing.grams->high > 0) {
      shares += other.grams->low / thing.grams->high;
    }
  }
  return shares;
}

void look_at(Check& check, const flow::Thing& thing) {
  const flow::Use* first = nullptr;
  for (const int number : thing.uses) {
    const flow::Use& use = check.flow.uses[index_of(number)];
    const bool stated = use.take == Take::share || use.take == Take::amount;
    if (stated && stated_with(check, thing, use) > 1 + weighing) {
      check.say(place_of(check, use), "the steps take more of " + called(thing) + " than there is",
                "let what they take come to all of it, or say \"the rest\" for the last");
      return;
    }
    if (use.take != Take::unstated || use.mark == fiche::none || use.instead) continue;
    if (first == nullptr) {
      first = &use;
      continue;
    }
    if (!made_together(check.flow, *first, use)) continue;
    check.say(place_of(check, use), "all of " + called(thing) + " goes into two steps; neither says how much it takes",
              "divide it: take=\"half\", take=\"200 g\", take=\"the rest\"")
        .related.push_back({place_of(check, *first), "taken here before", {}, {}, {}});
    return;
  }
}

void run(Check& check) {
  for (const flow::Thing& thing : check.flow.things) {
    if (thing.kind == flow::Thing::Kind::result && !thing.id.empty()) look_at(check, thing);
  }
}

}  // namespace

/// A named result of which two steps take all, or of which stated takes come to more than all.
const Rule result_used_twice = {
    .id = "result-used-twice",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "what a step makes is used twice over",
    .explanation = R"(All of the syrup goes into the sorbet, and two steps later all of it is brushed on the sponge. Two steps that take the
same result must say how much each takes; shares and amounts must not come to more than there is. Branches, steps that
are done only if something is so, and what is only spoken of again are let be.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">100 g</ingredient>
    <step makes="whipped">Whip the <use of="cream">cream</use> cold.</step>
    <step makes="one">Fold the <use of="whipped">cream</use> into the <use of="milk">milk</use>.</step>
    <step makes="two">Sieve the <use of="whipped">cream</use>.</step>
    <step>Lay <use of="one">one</use> on <use of="two">the other</use>.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">100 g</ingredient>
    <step makes="whipped">Whip the <use of="cream">cream</use> cold.</step>
    <step makes="one">Fold <use of="whipped" take="half">half of the cream</use> into the <use of="milk">milk</use>.</step>
    <step makes="two">Sieve <use of="whipped" take="the rest">the rest</use>.</step>
    <step>Lay <use of="one">one</use> on <use of="two">the other</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
