#include <algorithm>

#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// "two 26 cm rings": a figure with a unit of length in plain words.
bool says_a_length(const Check& check, std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto is_digit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
    if (!is_digit(at) || (at > 0 && is_digit(at - 1))) continue;
    if (measure::find_amount(text.substr(at), measure::length_kinds, check.fiche.reading).used > 0) return true;
  }
  return false;
}

/// It is shaped by the piece before it is baked: then what a portion weighs is what a piece weighs.
bool shaped_by_the_piece(const Check& check) {
  return std::any_of(check.fiche.steps.begin(), check.fiche.steps.end(), [](const fiche::Step& step) {
    return std::any_of(step.actions.begin(), step.actions.end(), [](std::string_view action) {
      return action == "shape" || action == "divide" || action == "cut" || action == "pipe" || action == "roll" || action == "scale";
    });
  });
}

/// A mould, how many pieces it makes, or the weight of one; what a portion weighs says nothing of how a whole is baked.
bool yield_says_size(const Check& check, Node yield) {
  const fiche::Document& document = check.document;
  const auto has = [&](At at) { return document.find(yield, at) != fiche::none; };
  return document.child(yield, El::mould) != fiche::none || has(At::pieces) || (has(At::each) && (!has(At::portions) || shaped_by_the_piece(check))) ||
         says_a_length(check, document.get(yield, At::words));
}

bool any_yield_says_size(const Check& check, Node component) {
  return std::any_of(check.fiche.yields.begin(), check.fiche.yields.end(), [&](Node yield) {
    Node above = check.document.parent(yield);
    while (above != component && above != check.document.root() && above != check.document.top())
      above = check.document.parent(above);
    return above == component || check.document.parent(yield) == check.document.root()
               ? yield_says_size(check, yield)
               : false;
  });
}

/// A length, an amount for one piece, or a mould the kitchen knows, in a step of the component up to this one.
bool steps_say_size(const Check& check, const fiche::Step& baking) {
  for (const fiche::Step& step : check.fiche.steps) {
    bool says = false;
    if (step.component == baking.component) {
      for_each_mark(check.document, step.node, [&](Node mark) {
        const El el = check.document.el(mark);
        says |= el == El::length || el == El::amount;
        says |= el == El::tool && check.document.find(mark, At::ref) != fiche::none;
        says |= el == El::time && check.document.find(mark, At::depth) != fiche::none;
      });
      says = says || says_a_length(check, own_words(check, step.node));
    }
    if (says) return true;
    if (&step == &baking) return false;
  }
  return false;
}

/// Eggs, apples, joints: what is baked whole is counted.
bool baked_by_the_piece(const Check& check, Node component) {
  return std::any_of(check.fiche.ingredients.begin(), check.fiche.ingredients.end(), [&](const fiche::Ingredient& one) {
    const bool whole_piece = one.food != nullptr && one.food->role != food::Role::egg &&
                             check.document.find(one.node, At::pieces) != fiche::none;
    return one.component == component && whole_piece;
  });
}

void run(Check& check) {
  if (!is_shared(check)) return;
  for (const fiche::Step& step : check.fiche.steps) {
    if (std::find(step.actions.begin(), step.actions.end(), "bake") == step.actions.end()) continue;
    if (any_yield_says_size(check, step.component) || steps_say_size(check, step)) continue;
    if (baked_by_the_piece(check, step.component)) continue;
    say_to_share(check, check.document.head_span(step.node), "baked, and nothing says in what or how deep",
                 "give the yield its <mould> with size and fill, or say the depth or the weight of a piece in the step");
  }
}

}  // namespace

/// Something is baked, and neither a mould nor a depth nor the weight of a piece is stated.
const Rule baking_without_mould_or_depth = {
    .id = "baking-without-mould-or-depth",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "something is baked, and nothing says in what or how deep",
    .explanation = R"(The same batter takes 14 minutes spread 1 cm deep and 50 in a loaf tin. Without the mould or the depth the time
and the oven's figure mean nothing in another kitchen, and the yield cannot be moved to other moulds.

A mould in a yield, a depth, the weight of one piece, a number of pieces, or a size in plain words ("two 26 cm rings")
will each do. A draft is not asked.)",
    .bad = R"(    <!-- in a released fiche -->
    <ingredient id="maize" food="cornmeal">200 g</ingredient>
    <ingredient id="water" food="water">300 g</ingredient>
    <step do="mix bake" on="oven">Stir the <use of="maize">meal</use> into the <use of="water">water</use>, and bake at
      <oven-temp mode="fan">180 °C</oven-temp>, <until>until the edge is brown and the middle firm</until>.</step>)",
    .good = R"(    <!-- in a released fiche -->
    <ingredient id="maize" food="cornmeal">200 g</ingredient>
    <ingredient id="water" food="water">300 g</ingredient>
    <step do="mix bake" on="oven">Stir the <use of="maize">meal</use> into the <use of="water">water</use>, spread
      <length>8 mm</length> deep and bake at <oven-temp mode="fan">180 °C</oven-temp>,
      <until>until the edge is brown and the middle firm</until>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
