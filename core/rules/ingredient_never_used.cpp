#include <algorithm>
#include <iterator>

#include "core/base/utf8.h"
#include "core/rules/balance.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// A line of a choice of which another line is used; a part of it is used.
bool stands_aside(const Check& check, std::size_t index) {
  const auto& things = check.flow.things;
  const Node around = check.document.parent(things[index].node);
  for (std::size_t i = 0; i < things.size(); ++i) {
    if (i == index || things[i].uses.empty()) continue;
    if (things[i].was == static_cast<int>(index)) return true;
    if (things[i].kind == flow::Thing::Kind::ingredient && check.document.el(around) == El::choice &&
        check.document.parent(things[i].node) == around) {
      return true;
    }
  }
  return false;
}

/// A mark of the component means nothing of the file, or a name that two lines share: which line is meant is not sure.
bool has_unsure_mark(const Check& check, Node component) {
  return std::any_of(check.fiche.steps.begin(), check.fiche.steps.end(), [&](const fiche::Step& step) {
    return step.component == component && std::any_of(step.uses.begin(), step.uses.end(), [&](Node use) {
             std::string_view ids = check.document.get(use, At::of);
             while (!(ids = base::trimmed(ids)).empty()) {
               const std::size_t end = std::min(ids.find(' '), ids.size());
               const auto known = check.fiche.ids.equal_range(ids.substr(0, end));
               const fiche::Node first = known.first == known.second ? fiche::none : known.first->second;
               const bool results = first != fiche::none && check.document.el(first) == El::step;
               if (!results && std::distance(known.first, known.second) != 1) return true;
               ids.remove_prefix(end);
             }
             return false;
           });
  });
}

void run(Check& check) {
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    if (thing.kind != flow::Thing::Kind::ingredient || !thing.uses.empty() || !thing.counts || thing.optional) continue;
    if (!is_marked(check.flow, thing.component) || check.document.child(thing.node, El::gap) != fiche::none) continue;
    if (stands_aside(check, i) || has_unsure_mark(check, thing.component)) continue;
    check.say(check.document.head_span(thing.node), called(thing) + " is listed and no step uses it",
              "say which step takes it with <use of=\"…\">, mark it optional=\"yes\" or purpose=\"…\", or take it off the list");
  }
}

}  // namespace

/// A counted ingredient without uses in a component whose steps have marks.
const Rule ingredient_never_used = {
    .id = "ingredient-never-used",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "an ingredient is listed and no step uses it",
    .explanation = R"(The cook weighs it, and at the end it stands on the bench: was it forgotten in the sponge, or is the list of an older
version? Both have ruined batches.

Only said where the steps of the component mark what they use. A food that a sentence names without a mark counts as
used, and so does one of which a part is (yolk and white). Optional ingredients, one line of a choice, what is not of
the food (bath, tin, bench) and a line with a <gap> are let be.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="salt" food="salt">3 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> cold.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="salt" food="salt">3 g</ingredient>
    <step>Whisk the <use of="milk">milk</use> cold with the <use of="salt">salt</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
