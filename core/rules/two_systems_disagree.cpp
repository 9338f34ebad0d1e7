#include "core/rules/agreement.h"
#include "core/rules/figure_text.h"
#include "core/rules/figure_value.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/stale.h"
#include "core/rules/statement_pair.h"

namespace tamis::rules {
namespace {

std::string difference(const Gap& gap, measure::Kind kind) {
  if (kind == measure::Kind::temperature) return figure_text(std::abs(gap.shown - gap.other), kind) + " apart";
  return times_text(gap.times) + " apart";
}

/// What a statement comes to in the unit that both can be compared in; its ends where it is a range.
std::string comes_to(const measure::Amount& amount) {
  const std::string high = figure_text(highest_of(amount), amount.kind);
  if (amount.form == measure::Amount::Form::at_most) return high;
  const std::string low = figure_text(lowest_of(amount), amount.kind);
  return amount.form == measure::Amount::Form::range ? low.substr(0, low.find(' ')) + "–" + high : low;
}

bool is_si(const measure::Amount& amount) {
  const auto& figure = amount.low.empty() ? amount.high : amount.low;
  return figure.front().unit->system == measure::System::si;
}

std::string beside(const fiche::Statement& statement, const measure::Amount& amount) {
  return quoted(statement.text) + (is_si(amount) ? "" : " (" + comes_to(amount) + ")");
}

void look_at(Check& check, const StatementPair& pair, const measure::Amount& shown, const measure::Amount& other) {
  const Gap gap = gap_between(shown, other, check.document.el(pair.shown->node));
  if (!gap.apart) return;
  base::Finding& finding = check.say(
      pair.other->where,
      beside(*pair.other, other) + " stands beside " + beside(*pair.shown, shown) + ": " + difference(gap, shown.kind),
      "find out which of the two was tested, and correct the other");
  finding.related.push_back({pair.shown->where, "the other figure", {}, {}, {}});
  if (gap.grave) check.worsen(finding, base::Severity::error);
}

void run(Check& check) {
  for (const StatementPair& pair : also_pairs(check.fiche)) {
    if (is_stale_at(check, pair.shown->node)) continue;
    if (pair.shown->amount && pair.other->amount) look_at(check, pair, *pair.shown->amount, *pair.other->amount);
    const auto& shown = pair.shown->lengths;
    const auto& other = pair.other->lengths;
    for (std::size_t i = 0; i < shown.size() && shown.size() == other.size(); ++i) look_at(check, pair, shown[i], other[i]);
  }
}

}  // namespace

/// A figure and the same in another system (also) lie further apart than rounding explains. A mass beside a volume is
/// left to mass-and-volume-disagree.
const Rule two_systems_disagree = {
    .id = "two-systems-disagree",
    .severity = base::Severity::warning,
    .topic = "measure",
    .summary = "the two figures of one amount do not agree",
    .explanation = R"(Where an amount stands in two systems, half of the readers take one figure and half the other. Both
must lead to the same dish.

Rounding is allowed for: half of the last place that is written, up to 6 % of each figure; 10 °C for ovens (the steps
of both dials), 2 °C for the food itself; 3 mm for small lengths. From twice the figure on (for temperatures: four
times what rounding explains) the finding is an error, for then one group of readers ruins the dish.)",
    .bad = R"(    <ingredient food="butter-unsalted" also="16 oz">300 g</ingredient>)",
    .good = R"(    <ingredient food="butter-unsalted" also="10 1/2 oz">300 g</ingredient>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
