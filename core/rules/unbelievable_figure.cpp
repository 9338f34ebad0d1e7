#include "core/rules/agreement.h"
#include "core/rules/belief.h"
#include "core/rules/figure_text.h"
#include "core/rules/figure_value.h"
#include "core/rules/near_miss.h"
#include "core/rules/oven_figure.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Statement;
using measure::Amount;
using measure::Kind;

constexpr std::string_view advice = "look for a slip in the figure or its unit";

/// Surfaces are seared and torched.
bool is_surface(const Check& check, const Statement& statement) {
  return check.document.get(statement.node, At::place) == "surface" ||
         says(words_around(check.document, statement.node), {"torch", "sear", "grill", "griddle", "wok", "flame"});
}

void hold_against(Check& check, const Statement& statement, const Amount& amount, const Belief& belief) {
  const double low = lowest_of(amount);
  const double high = highest_of(amount);
  constexpr double hair = 1e-6;  // 428 °F is 220 °C
  const bool over = high > belief.most + hair;
  if (!over && low >= belief.least - hair) return;
  if (belief.element == El::food_temp && over && is_surface(check, statement)) return;
  check.say(statement.where,
            statement.text + " is beyond belief for " + std::string(belief.what) + ": " + (over ? "at most " : "at least ") +
                figure_text(over ? belief.most : belief.least, belief.kind),
            std::string(advice))
      .source = belief.source;
}

void look_at(Check& check, const Statement& statement) {
  const El el = check.document.el(statement.node);
  for (const Belief& belief : beliefs_about(el)) {
    if (belief.attribute != statement.at) continue;
    if (statement.amount && statement.amount->has_figure() && statement.amount->kind == belief.kind) {
      hold_against(check, statement, *statement.amount, belief);
    }
    for (const Amount& length : statement.lengths) {
      if (length.has_figure() && length.kind == belief.kind) hold_against(check, statement, length, belief);
    }
  }
}

/// Portions of the fiche as a whole; 0 when it does not say.
double portions_of(const Check& check) {
  for (const fiche::Node n : check.fiche.yields) {
    if (check.document.parent(n) != check.document.root()) continue;
    const Statement* portions = check.fiche.statement(n, At::portions);
    return portions != nullptr && portions->amount ? highest_of(*portions->amount) : 0;
  }
  return 0;
}

void look_at_portions(Check& check) {
  const double portions = portions_of(check);
  if (!(portions > 0)) return;
  for (const fiche::Ingredient& ingredient : check.fiche.ingredients) {
    if (ingredient.food == nullptr || ingredient.amount < 0) continue;
    const Statement& stated = check.fiche.statements[static_cast<std::size_t>(ingredient.amount)];
    if (!stated.amount || !stated.amount->has_figure() || stated.amount->kind != Kind::mass) continue;
    const std::string_view purpose = check.document.get(ingredient.node, At::purpose);
    if (!purpose.empty() && purpose != "food") continue;
    const bool each = check.document.find(ingredient.node, At::per) != fiche::none;
    const double grams = stated.amount->middle_base().approximate() / (each ? 1 : portions);
    for (const PortionBelief& belief : portion_beliefs()) {
      if (belief.role != ingredient.food->role || grams <= belief.most_g) continue;
      check.say(stated.where,
                stated.text + " makes " + figure_text(grams, Kind::mass) + " a portion, beyond belief for " +
                    std::string(ingredient.food->english.substr(0, ingredient.food->english.find('|'))),
                std::string(advice) + ", and at the number of portions")
          .source = belief.source;
    }
  }
}

void run(Check& check) {
  for (const OvenFigure& figure : oven_figures(check)) {
    if (figure.verdict != OvenFigure::Verdict::beyond_belief) continue;
    check.say(figure.statement->where, figure.statement->text + " is hotter than any oven goes (550 °C)",
              std::string(advice))
        .source = "common practice: a wood-fired oven's floor reaches about 500 °C";
  }
  for (const Statement& statement : check.fiche.statements) look_at(check, statement);
  look_at_portions(check);
}

}  // namespace

/// A figure that nobody can mean: hotter than any oven, longer than any shift, more salt than the dish weighs.
const Rule unbelievable_figure = {
    .id = "unbelievable-figure",
    .severity = base::Severity::error,
    .topic = "measure",
    .summary = "a figure that nobody can mean",
    .explanation = R"(An oven at 1800 °C, four hundred hours of whisking, 40 kg of salt for ten portions: a zero too many or
the wrong unit, and best found before the order goes out.

The bounds are wide on purpose, each with its source in core/rules/belief.inc: what lies outside is a slip, not an
unusual recipe. Portions count only where the fiche states them.)",
    .bad = R"(    <step hands="400 h">Whisk the yolks.</step>)",
    .good = R"(    <step hands="4 min">Whisk the yolks.</step>)",
    .source = "core/rules/belief.inc, each bound with its source",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
