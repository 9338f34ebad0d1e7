#include <cmath>

#include "core/base/utf8.h"
#include "core/rules/agreement.h"
#include "core/rules/expected_mass.h"
#include "core/rules/figure_text.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/stale.h"
#include "core/rules/statement_pair.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Statement;
using measure::Kind;

bool is(const Statement* statement, Kind kind) {
  return statement != nullptr && statement->amount && statement->amount->has_figure() && statement->amount->kind == kind;
}

/// "egg-yolk 17 g + egg-white 33 g": the part of which one weighs about so much, or "".
std::string part_that_weighs(std::string_view splits, double grams) {
  while (!splits.empty()) {
    const std::size_t plus = std::min(splits.find('+'), splits.size());
    const std::string_view part = base::trimmed(splits.substr(0, plus));
    splits.remove_prefix(std::min(plus + 1, splits.size()));
    const std::size_t space = part.find(' ');
    if (space == part.npos) continue;
    const auto mass = base::Ratio::parse(part.substr(space + 1, part.find(' ', space + 1) - space - 1));
    if (mass && std::abs(mass->approximate() - grams) <= 0.15 * grams) return std::string(part.substr(0, space));
  }
  return {};
}

void look_at(Check& check, fiche::Node n, const Statement& count, const Statement& mass) {
  const fiche::Node ingredient = ingredient_of(check.fiche, n);
  if (ingredient == fiche::none) return;
  const food::Food* food = check.kitchen.find_food(check.document.get(ingredient, At::food));
  const double pieces = count.amount->middle_base().approximate();
  if (food == nullptr || !(pieces > 0)) return;
  std::string_view size = check.document.get(ingredient, At::size);
  if (size.empty() && count.at != At::pieces) size = count.amount->low.empty() ? "" : count.amount->low.front().unit->id;
  const auto range = mass_of_piece(*food, size, check.document.get(ingredient, At::prep));
  if (!range) return;
  const double each = mass.amount->middle_base().approximate() / pieces;
  const double slack = slack_of_printed(mass.amount->low.empty() ? mass.amount->high : mass.amount->low, 0.5) / pieces;
  if (each + slack >= range->least && each - slack <= range->most) return;
  const std::string name(food->english.substr(0, food->english.find('|')));
  const std::string part = part_that_weighs(food->splits, each);
  base::Finding& finding = check.say(
      mass.where,
      figure_text(pieces, Kind::count) + " pieces of " + name + " weigh about " +
          figure_text(pieces * range->usual, Kind::mass) + ", not " + figure_text(pieces * each, Kind::mass),
      part.empty() ? "weigh them once and correct the wrong one, or say the size with size=\"…\""
                   : "a piece of " + figure_text(each, Kind::mass) + " is " + part + ": is that the food meant?");
  finding.source = range->source;
  finding.related.push_back({count.where, "the count", {}, {}, {}});
  const double times = each / range->usual;
  if (times >= 2 || times <= 0.5) check.worsen(finding, base::Severity::error);
}

void run(Check& check) {
  for (const Statement& statement : check.fiche.statements) {
    if (statement.fault) continue;
    const fiche::Node n = statement.node;
    const Statement* own = statement.at == At::unknown ? nullptr : check.fiche.statement(n);
    if (statement.at == At::pieces && is(&statement, Kind::count) && is(own, Kind::mass)) {
      if (!is_stale_at(check, n)) look_at(check, n, statement, *own);
    } else if (statement.at == At::also && is(&statement, Kind::mass) && is(own, Kind::count)) {
      if (!is_stale_at(check, n)) look_at(check, n, *own, statement);
    } else if (statement.at == At::also && is(&statement, Kind::count) && is(own, Kind::mass)) {
      if (!is_stale_at(check, n)) look_at(check, n, statement, *own);
    }
  }
}

}  // namespace

/// A count and a mass of one food that no size of it explains.
const Rule count_and_mass_disagree = {
    .id = "count-and-mass-disagree",
    .severity = base::Severity::warning,
    .topic = "measure",
    .summary = "so many pieces cannot weigh that much",
    .explanation = R"(Five egg yolks weigh 90 g; five eggs do not. Where a line gives a count and a mass that no size of the
food explains, either the figure or the food is wrong.

Allowed for: the sizes the table has (or the one that size="…" names), 15 % either way for eggs, 60 % for fruit and
vegetables, three times for leaves and pods, what is trimmed off, preparation (prep), and what the written mass rounds. Meat and fish are cut to any size and are not judged. From
twice or half the usual mass on the finding is an error.)",
    .bad = R"(    <ingredient food="egg-whole" pieces="5">90 g</ingredient>)",
    .good = R"(    <ingredient food="egg-yolk" pieces="5">90 g</ingredient>)",
    .source = "the mass of a piece (tamis foods)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
