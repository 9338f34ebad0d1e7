#include <algorithm>

#include "core/rules/balance.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// The sentence, or a note on keeping, says what becomes of it.
bool is_kept(const Check& check, const flow::Thing& thing) {
  for (Node component : check.fiche.components) {
    for (Node c = check.document.first_child(component); c != fiche::none; c = check.document.next(c)) {
      if (check.document.el(c) == El::keep && check.document.get(c, At::of) == thing.id) return true;
    }
  }
  return says(words_around(check.document, thing.node),
              {"keep", "reserve", "save", "discard", "throw", "serve", "pour off", "set aside", "garde", "conserv", "jet",
               "serv", "aufheb", "beiseite", "weg", "guard", "desech", "tir"});
}

bool comes_back(const flow::Flow& flow, int index) {
  const flow::Thing& thing = flow.things[index_of(index)];
  return std::any_of(flow.things.begin(), flow.things.end(), [&](const flow::Thing& other) {
    return other.returns >= 0 && flow.things[index_of(other.returns)].id == thing.id;
  });
}

/// The step divides an ingredient of which parts are taken.
bool is_divided(const flow::Flow& flow, int step) {
  return std::any_of(flow.things.begin(), flow.things.end(), [&](const flow::Thing& part) {
    return part.kind == flow::Thing::Kind::part && part.maker == step && !part.uses.empty();
  });
}

bool ends_its_component(const Check& check, int step) {
  for (std::size_t i = index_of(step) + 1; i < check.flow.steps.size(); ++i) {
    const flow::Step& later = check.flow.steps[i];
    if (later.component != check.flow.steps[index_of(step)].component) break;
    if (!later.aside && !later.optional) return false;
  }
  return true;
}

void run(Check& check) {
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    if (thing.kind != flow::Thing::Kind::result || thing.was >= 0 || thing.maker < 0) continue;
    if (thing.id.empty() || !thing.uses.empty()) continue;
    const flow::Step& step = check.flow.steps[index_of(thing.maker)];
    if (step.optional || !step.branch.empty() || is_divided(check.flow, thing.maker)) continue;
    if (ends_its_component(check, thing.maker) || comes_back(check.flow, static_cast<int>(i)) || is_kept(check, thing)) continue;
    const fiche::Attr makes = check.document.find(step.node, At::makes);
    check.say(check.document.value_span(makes), "the step makes " + called(thing) + " and nothing uses it",
              "say which step takes it with <use of=\"…\">, say that it is kept, served or discarded, or take the name away");
  }
}

}  // namespace

/// A named result without uses that nothing in words accounts for.
const Rule result_never_used = {
    .id = "result-never-used",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "what a step makes is never used",
    .explanation = R"(A result with a name is made for something. When no step takes it and the next starts on something else, part of the
dish is lost on the way: a mark is missing, or a step.

Not said of the last result of a component, of optional steps and branches, nor where the sentence says that it is
kept, reserved, served or discarded.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="cream" food="cream-35">200 g</ingredient>
    <step makes="curds whey">Strain the <use of="milk">milk</use>.</step>
    <step>Whisk the <use of="cream">cream</use> with the <use of="curds">curds</use>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="cream" food="cream-35">200 g</ingredient>
    <step makes="curds whey">Strain the <use of="milk">milk</use>; discard the whey.</step>
    <step>Whisk the <use of="cream">cream</use> with the <use of="curds">curds</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
