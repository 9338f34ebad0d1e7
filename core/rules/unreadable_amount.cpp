#include "core/base/utf8.h"
#include "core/rules/reading_fault.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;

/// Marks that stand for a figure and are nothing without one.
bool wants_figure(El el) {
  return el == El::food_temp || el == El::medium_temp || el == El::room_temp || el == El::time || el == El::length ||
         el == El::share || el == El::oven_temp;
}

bool has_figure_elsewhere(const Check& check, fiche::Node n) {
  return check.document.find(n, At::top) != fiche::none || check.document.find(n, At::bottom) != fiche::none;
}

void run(Check& check) {
  say_reading_faults(check, "unreadable-amount");
  for (const auto& [n, rule] : check.structure.elements) {
    if (!wants_figure(rule->el) || has_figure_elsewhere(check, n)) continue;
    if (!base::trimmed(check.document.all_text(n)).empty()) continue;
    check.say(check.document.head_span(n), "<" + std::string(rule->name) + "> holds no figure",
              "write the figure with its unit in it, or <gap/> where the source does not say");
  }
}

}  // namespace

/// A text that should be an amount, a temperature, a time or a length and cannot be read as one, or is empty.
const Rule unreadable_amount = {
    .id = "unreadable-amount",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a measure that cannot be read",
    .explanation = R"(Where a measure is marked, the whole text must be one: a figure and its unit, a range, or a word of
the trade. "300 g cold" is not read as 300 g with something behind it, for the next one might be "300 g or less".

Put words about the food into prep or into the sentence, and leave the figure alone in the mark.)",
    .bad = R"(    <ingredient food="milk-whole">300 g g</ingredient>)",
    .good = R"(    <ingredient food="milk-whole">300 g</ingredient>)",
    .source = "the grammar of amounts (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
