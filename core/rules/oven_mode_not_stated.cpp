#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/figure_value.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// All ovens of the house have one mode, or the step names one of them.
bool kitchen_settles(const Check& check, Node mark) {
  const auto& ovens = check.kitchen.ovens;
  const auto has_mode = [](const fiche::Kitchen::Oven& oven) { return !oven.mode.empty(); };
  if (!ovens.empty() && std::all_of(ovens.begin(), ovens.end(), [&](const auto& oven) {
        return has_mode(oven) && oven.mode == ovens.front().mode;
      })) {
    return true;
  }
  const Node step = step_of(check.document, mark);
  if (step == fiche::none) return false;
  const std::string_view on = base::trimmed(check.document.get(step, At::on));
  return std::any_of(ovens.begin(), ovens.end(), [&](const auto& oven) { return oven.id == on && has_mode(oven); });
}

/// A deck's two heats say the mode; a trade word ("moderate oven") and a gas mark have rules of their own.
bool needs_mode(const Check& check, Node mark) {
  const fiche::Statement* own = check.fiche.statement(mark);
  if (own == nullptr || !own->amount || !own->amount->has_figure()) return false;
  const measure::Amount& amount = *own->amount;
  const std::string_view unit = (amount.low.empty() ? amount.high : amount.low).front().unit->id;
  if (unit == "gas-mark" || highest_of(amount) < 60) return false;
  return check.document.find(mark, At::mode) == fiche::none && check.document.find(mark, At::top) == fiche::none &&
         check.document.find(mark, At::bottom) == fiche::none && !kitchen_settles(check, mark);
}

void run(Check& check) {
  base::Finding* first = nullptr;
  for (const auto& [n, rule] : check.structure.elements) {
    if (rule->el != El::oven_temp || !needs_mode(check, n)) continue;
    const fiche::Statement& own = *check.fiche.statement(n);
    if (first != nullptr) {
      first->related.push_back({own.where, own.text + ", no mode either", {}, {}, {}});
      continue;
    }
    first = &check.say(own.where, own.text + ", and nothing says whether static or fan",
                       "add mode=\"static\", \"fan\", \"deck\", \"combi\" or \"steam\" to <oven-temp>");
  }
}

}  // namespace

/// An oven temperature without the oven's mode, where the kitchen's ovens do not settle it. Said once a fiche; the
/// others are related places.
const Rule oven_mode_not_stated = {
    .id = "oven-mode-not-stated",
    .severity = base::Severity::advice,
    .topic = "measure",
    .summary = "an oven figure, and nothing says whether static or fan",
    .explanation = R"(Moving air carries more heat: what takes 180 °C in still air takes about 160 °C with the fan. A figure
without its mode is 20 °C of doubt for every other kitchen, and cannot be converted.

The rule is silent where a deck's two heats are given, where the kitchen file's ovens all have one mode, or where the
step names an oven that has one. Leave it where the source itself does not say; a <note> may say so.)",
    .bad = R"(    <step>Bake at <oven-temp>180 °C</oven-temp>.</step>)",
    .good = R"(    <step>Bake at <oven-temp mode="static">180 °C</oven-temp>, or <oven-temp mode="fan">160 °C</oven-temp>.</step>)",
    .source = "common practice: 20 °C or 25 °F less with a fan",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
