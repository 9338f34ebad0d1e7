#include <algorithm>

#include "core/rules/balance.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using Take = flow::Use::Take;

void look_at(Check& check, const flow::Thing& thing) {
  const flow::Use* first = nullptr;
  for (const int number : thing.uses) {
    const flow::Use& use = check.flow.uses[index_of(number)];
    if (use.take != Take::unstated || use.how != flow::Use::How::marked || use.instead) continue;
    if (first == nullptr) {
      first = &use;
    } else if (made_together(check.flow, *first, use)) {
      check.say(place_of(check, use), called(thing) + " goes into two steps; neither says how much it takes",
                "divide it: take=\"half\", take=\"200 g\", take=\"the rest\"")
          .related.push_back({place_of(check, *first), "taken here before", {}, {}, {}});
      return;
    }
  }
}

void run(Check& check) {
  for (const flow::Thing& thing : check.flow.things) {
    const bool weighed = thing.kind == flow::Thing::Kind::ingredient || thing.kind == flow::Thing::Kind::component;
    if (weighed && thing.counts && !thing.trace && !thing.optional) look_at(check, thing);
  }
}

}  // namespace

/// Two unstated takes of an ingredient or a component.
const Rule division_not_stated = {
    .id = "division-not-stated",
    .severity = base::Severity::advice,
    .topic = "balance",
    .summary = "an ingredient goes into two steps and nothing says how much into each",
    .explanation = R"("Whip the cream with the sugar ... whisk the yolks with the sugar": one line of sugar, two bowls. Who wrote it knows
how it is divided; who cooks from it guesses. Spoken of again where its bowl is at hand it is no second use; salt to
taste, a pinch and what is optional are let be.)",
    .bad = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">100 g</ingredient>
    <step makes="one">Whip the <use of="cream">cream</use> with the <use of="sugar">sugar</use>.</step>
    <step makes="two">Whisk the <use of="yolks">yolks</use> with the <use of="sugar">sugar</use>.</step>
    <step>Fold <use of="one">one</use> into <use of="two">the other</use>.</step>)",
    .good = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">100 g</ingredient>
    <step makes="one">Whip the <use of="cream">cream</use> with <use of="sugar" take="50 g">50 g of the sugar</use>.</step>
    <step makes="two">Whisk the <use of="yolks">yolks</use> with <use of="sugar" take="the rest">the rest</use>.</step>
    <step>Fold <use of="one">one</use> into <use of="two">the other</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
