#include <cmath>

#include "core/rules/agreement.h"
#include "core/rules/expected_mass.h"
#include "core/rules/figure_text.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/stale.h"
#include "core/rules/statement_pair.h"

namespace tamis::rules {
namespace {

using measure::Amount;
using measure::Kind;

/// Most that rounding to an eighth of an ounce or a quarter teaspoon can hide in a small figure.
constexpr double most_slack = 0.25;

double rounding(const Amount& amount) {
  const double value = amount.middle_base().approximate();
  return value > 0 ? slack_of_printed(amount.form == Amount::Form::at_most ? amount.high : amount.low, most_slack) / value : 0;
}

std::string advice_for(const MassRange& range, double mass, double volume) {
  return "weigh it once and correct the wrong one: " + figure_text(mass, Kind::mass) + " would be " +
         figure_text(mass / range.usual, Kind::volume) + ", and " + figure_text(volume, Kind::volume) + " would be " +
         figure_text(volume * range.usual, Kind::mass);
}

void look_at(Check& check, const StatementPair& pair) {
  const bool shown_is_mass = pair.shown->amount->kind == Kind::mass;
  const fiche::Statement& heavy = shown_is_mass ? *pair.shown : *pair.other;
  const fiche::Statement& wide = shown_is_mass ? *pair.other : *pair.shown;
  const auto range = mass_of_volume(*pair.food, pair.prep);
  const double mass = heavy.amount->middle_base().approximate();
  const double volume = wide.amount->middle_base().approximate();
  if (!range || !(mass > 0) || !(volume > 0)) return;
  const double slack = 1 + rounding(*heavy.amount) + rounding(*wide.amount);
  const double density = mass / volume;
  if (density >= range->least / slack && density <= range->most * slack) return;
  const double expected = volume * range->usual;
  const auto& figure = heavy.amount->low.empty() ? heavy.amount->high : heavy.amount->low;
  const bool is_si = figure.front().unit->system == measure::System::si;
  std::string name(pair.food->english.substr(0, pair.food->english.find('|')));
  if (!range->form.empty()) name += ", " + std::string(range->form) + ",";
  base::Finding& finding =
      check.say(pair.other->where,
                quoted(wide.text) + " of " + name + " weighs about " + figure_text(expected, Kind::mass) + ", not " +
                    figure_text(mass, Kind::mass) + (is_si ? "" : " (" + quoted(heavy.text) + ")") + ": " +
                    times_text(std::max(mass, expected) / std::min(mass, expected)) + " apart",
                advice_for(*range, mass, volume));
  finding.source = range->source;
  finding.related.push_back({pair.shown->where, "the other figure", {}, {}, {}});
  if (std::max(mass, expected) >= 2 * std::min(mass, expected)) check.worsen(finding, base::Severity::error);
}

void run(Check& check) {
  for (const StatementPair& pair : also_pairs(check.fiche)) {
    if (pair.food == nullptr || !pair.shown->amount || !pair.other->amount) continue;
    const Amount& shown = *pair.shown->amount;
    const Amount& other = *pair.other->amount;
    const bool crossed = (shown.kind == Kind::mass && other.kind == Kind::volume) ||
                         (shown.kind == Kind::volume && other.kind == Kind::mass);
    if (!crossed || !shown.has_figure() || !other.has_figure() || is_rough(shown) || is_rough(other)) continue;
    if (!is_stale_at(check, pair.shown->node)) look_at(check, pair);
  }
}

}  // namespace

/// A mass and a volume of one food that no way of filling the cup explains.
const Rule mass_and_volume_disagree = {
    .id = "mass-and-volume-disagree",
    .severity = base::Severity::warning,
    .topic = "measure",
    .summary = "a food's mass and volume cannot both be right",
    .explanation = R"(A cup of flour weighs 125 g, not 250. When a line gives both and they do not fit, whoever weighs and
whoever measures make two different dishes.

The food's own spread is allowed for: sifted or packed, chopped or whole (prep names the form), 8 % for liquids, 20 %
for flour and salt, 35 to 40 % for spices and nuts, 45 % for cut fruit and vegetables, and what the written figures round
off. The rule is silent where the table has no volume of the food. From twice the figure on the finding is an error.)",
    .bad = R"(    <ingredient food="sugar-white" also="250 ml">400 g</ingredient>)",
    .good = R"(    <ingredient food="sugar-white" also="250 ml">210 g</ingredient>)",
    .source = "the food's own measures (tamis foods)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
