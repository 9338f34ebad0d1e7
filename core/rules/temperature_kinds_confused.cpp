#include "core/base/utf8.h"
#include "core/rules/figure_value.h"
#include "core/rules/oven_figure.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Statement;

double highest(const Statement& statement) { return highest_of(*statement.amount); }

/// "bake at <food-temp>180 °C": an oven's words before a figure that food has only in sugar work and frying.
bool is_an_ovens(const Check& check, const Statement& statement) {
  if (highest(statement) < 110) return false;
  const std::string before = words_before(check.document, statement.node);
  return says_oven(before) && !says_core(before) &&
         !says(before, {"until", "syrup", "sugar", "caramel", "oil", "surface", "sirop", "sucre", "zucker"});
}

/// "until the core is at <oven-temp>62 °C": the food's words close before a figure that is low for an oven.
bool is_the_foods(const Check& check, const Statement& statement) {
  if (highest(statement) > 100) return false;
  const std::string before = words_before(check.document, statement.node);
  constexpr std::size_t close = 24;  // bytes
  const std::string_view tail = std::string_view(before).substr(before.size() > close ? before.size() - close : 0);
  return says_core(tail) && !says_oven(tail) && !says(tail, {"then", "turn", "lower"}) &&
         says(before, {"until", "reach", "jusqu", "bis ", "hasta"});
}

void look_at_mark(Check& check, const Statement& statement) {
  const std::string& text = statement.text;
  switch (check.document.el(statement.node)) {
    case El::food_temp:
      if (is_an_ovens(check, statement)) {
        check.say(statement.where, text + " is marked as the food's, and the sentence speaks of the oven's",
                  "mark it with <oven-temp>");
      }
      return;
    case El::oven_temp:
      if (is_the_foods(check, statement)) {
        check.say(statement.where, text + " is marked as the oven's, and the sentence speaks of the food's core",
                  "mark it with <food-temp place=\"core\">");
      }
      return;
    case El::room_temp:
      if (highest(statement) > 60 || highest(statement) < -10) {
        check.say(statement.where, text + " is no room's temperature",
                  "mark it with <oven-temp>, <food-temp> or <medium-temp>");
      }
      return;
    case El::medium_temp: {
      const std::string of = base::lower(check.document.get(statement.node, fiche::At::of));
      if (says(of, {"oven", "four", "ofen", "backofen", "horno"})) {
        check.say(statement.where, text + " is the oven's, and is marked as a medium's", "mark it with <oven-temp>");
      }
      return;
    }
    default: return;
  }
}

void run(Check& check) {
  for (const OvenFigure& figure : oven_figures(check)) {
    if (figure.verdict != OvenFigure::Verdict::no_ovens) continue;
    check.say(figure.statement->where,
              figure.statement->text + " is a fridge's or a room's temperature, not an oven's",
              "mark it with <medium-temp>, <room-temp> or <food-temp>");
  }
  for (const Statement& statement : check.fiche.statements) {
    if (statement.value != fiche::Value::temperature || statement.at != fiche::At::unknown) continue;
    if (statement.amount && statement.amount->has_figure()) look_at_mark(check, statement);
  }
}

}  // namespace

/// A temperature under the mark of another: an oven's as the food's, a fridge's as an oven's, a core's as the oven's.
const Rule temperature_kinds_confused = {
    .id = "temperature-kinds-confused",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "an oven's, a food's, a medium's or a room's temperature under the wrong mark",
    .explanation = R"(Of the oven, of the food, of what surrounds it, of the room: the four are told apart because each is
measured with another thermometer and converted and rounded in another way. 180 °C marked as the food's would be
printed as the point at which the cake is done.

The rule looks at the figure and at the words before it in the sentence. It knows that sugar, oil and surfaces get
hotter than an oven's low settings, and that food is baked "until" a temperature of its own.)",
    .bad = R"(    <step>Bake at <food-temp>180 °C</food-temp>.</step>)",
    .good = R"(    <step>Bake at <oven-temp mode="fan">180 °C</oven-temp>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
