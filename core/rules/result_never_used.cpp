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

bool is_of(const flow::Flow& flow, const flow::Thing& thing, Node component) {
  if (thing.kind == flow::Thing::Kind::component) return thing.node == component;
  return thing.kind == flow::Thing::Kind::result && thing.maker >= 0 && flow.steps[index_of(thing.maker)].component == component;
}

/// A later component puts others together, and nobody takes anything of this one.
bool is_forgotten(const Check& check, Node component) {
  if (component == fiche::none || check.document.get(component, At::optional) == "yes") return false;
  bool put_together = false;
  for (const flow::Use& use : check.flow.uses) {
    const flow::Thing& thing = check.flow.things[index_of(use.thing)];
    const Node taker = check.flow.steps[index_of(use.step)].component;
    if (taker == component) continue;
    if (is_of(check.flow, thing, component)) return false;
    const bool from_elsewhere = thing.kind == flow::Thing::Kind::component || thing.kind == flow::Thing::Kind::result;
    if (from_elsewhere && taker > component && !is_of(check.flow, thing, taker)) put_together = true;
  }
  return put_together;
}

void run(Check& check) {
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    if (thing.kind != flow::Thing::Kind::result || thing.was >= 0 || thing.maker < 0) continue;
    if (thing.id.empty() || !thing.uses.empty()) continue;
    const flow::Step& step = check.flow.steps[index_of(thing.maker)];
    if (step.optional || !step.branch.empty() || is_divided(check.flow, thing.maker)) continue;
    if (ends_its_component(check, thing.maker) && !is_forgotten(check, step.component)) continue;
    if (comes_back(check.flow, static_cast<int>(i)) || is_kept(check, thing)) continue;
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

Not said of the last result of a component, unless a later component is put together from others and leaves this one
out; nor of optional steps and branches, nor where the sentence says that it is kept, reserved, served or discarded.)",
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
