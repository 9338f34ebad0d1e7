#include "core/rules/time_limits.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/figure_text.h"
#include "core/rules/sentence.h"
#include "core/rules/step_name.h"

namespace tamis::rules {
namespace {

using fiche::At;
using flow::TimeConflict;
using flow::TimeReason;
using Kind = flow::TimeReason::Kind;
using Seconds = flow::TimeNetwork::Seconds;

bool has(const Limits& limits, const TimeConflict& conflict, std::initializer_list<Kind> kinds) {
  return std::any_of(conflict.sides.begin(), conflict.sides.end(), [&](flow::TimeNetwork::Side side) {
    const Kind kind = limits.times.reasons[static_cast<std::size_t>(side.constraint)].kind;
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
  });
}

/// The attributes that may state a side, best first.
std::vector<At> attributes_of(const StatedSide& side) {
  switch (side.reason.kind) {
    case Kind::length: return {At::unattended, At::hands};
    case Kind::wait: return {side.least ? At::at_least : At::at_most};
    case Kind::day: return {At::day};
    case Kind::night: return {At::unattended};
    case Kind::keep: return {At::for_};
    case Kind::order:
    case Kind::within: return {};
  }
  return {};
}

std::string words_of(const Check& check, const StatedSide& side) {
  const std::string step = name_of_step(check, side.reason.step);
  switch (side.reason.kind) {
    case Kind::length: return step + " takes at least " + time_words(side.time);
    case Kind::wait: return step + (side.least ? " waits at least " : " waits at most ") + time_words(side.time);
    case Kind::within: return step + " comes within " + time_words(side.time);
    case Kind::day: return step + " is on this day";
    case Kind::night: return step + " is not over before the next morning";
    case Kind::keep: return "it keeps " + time_words(side.time);
    case Kind::order: return {};
  }
  return {};
}

/// Whether the fiche says anything that could be too late: most fiches do not, and need no times worked out.
bool states_limits(const Check& check) {
  return std::any_of(check.fiche.statements.begin(), check.fiche.statements.end(), [&](const fiche::Statement& statement) {
    const fiche::El el = check.document.el(statement.node);
    if (statement.at == At::at_most || statement.at == At::day) return true;
    if (statement.at == At::for_ && el == fiche::El::keep) return true;
    if (el != fiche::El::time || statement.at != At::unknown || !statement.amount) return false;
    if (statement.amount->form == measure::Amount::Form::at_most) return true;
    const fiche::Node before = check.document.previous(statement.node);  // "within", said before the mark
    return before != fiche::none && says(base::lower(check.document.value(before)), {"within", "moins", "innerhalb", "binnen", "menos"});
  });
}

}  // namespace

const std::optional<Limits>& limits_of(const Check& check) {
  return check.once<std::optional<Limits>>([&]() -> std::optional<Limits> {
    if (!states_limits(check)) return std::nullopt;
    return Limits{check.times(), flow::time_conflicts(check.times())};
  });
}

bool is(const Limits& limits, const TimeConflict& conflict, Conflict kind) {
  if (has(limits, conflict, {Kind::keep})) return kind == Conflict::keep;
  if (has(limits, conflict, {Kind::wait, Kind::within})) return kind == Conflict::limits;
  if (has(limits, conflict, {Kind::night})) return kind == Conflict::night;
  return kind == Conflict::days;
}

std::vector<StatedSide> stated_sides(const Limits& limits, const TimeConflict& conflict) {
  std::vector<StatedSide> out;
  for (const flow::TimeNetwork::Side side : conflict.sides) {
    const auto& constraint = limits.times.network.constraints()[static_cast<std::size_t>(side.constraint)];
    out.push_back({limits.times.reasons[static_cast<std::size_t>(side.constraint)], side.least,
                   side.least ? constraint.least.value_or(0) : constraint.most.value_or(0)});
  }
  return out;
}

const StatedSide* limit_of(const std::vector<StatedSide>& sides, std::initializer_list<Kind> kinds) {
  const auto found = std::find_if(sides.begin(), sides.end(), [&](const StatedSide& side) {
    return !side.least && std::find(kinds.begin(), kinds.end(), side.reason.kind) != kinds.end();
  });
  return found == sides.end() ? nullptr : &*found;
}

Seconds needed(const std::vector<StatedSide>& sides) {
  Seconds sum = 0;
  for (const StatedSide& side : sides) sum += side.least ? side.time : 0;
  return sum;
}

base::Span place_of(const Check& check, const StatedSide& side) {
  for (const At attribute : attributes_of(side)) {
    if (const auto* statement = check.fiche.statement(side.reason.node, attribute)) return statement->where;
  }
  if (side.reason.kind == Kind::length) {
    for (const flow::TimeMark& mark : flow::time_marks(check.fiche, side.reason.node)) return mark.statement->where;
  }
  if (const auto* statement = check.fiche.statement(side.reason.node)) return statement->where;
  return check.document.head_span(side.reason.node);
}

void relate(const Check& check, base::Finding& finding, const std::vector<StatedSide>& sides, const StatedSide& main) {
  for (const StatedSide& side : sides) {
    if (&side == &main || side.reason.kind == Kind::order || (side.least && side.time == 0)) continue;
    finding.related.push_back({place_of(check, side), words_of(check, side), {}, {}, {}});
  }
}

std::string time_words(Seconds seconds) {
  // "36 h" and "2 days".
  constexpr Seconds day = 86400;
  if (seconds >= 2 * day && seconds % day == 0) return std::to_string(seconds / day) + " days";
  return figure_text(static_cast<double>(seconds), measure::Kind::time);
}

std::string name_of_step(const Check& check, int step) {
  if (step < 0) return "this step";
  return step_name(check.document, check.flow.steps[static_cast<std::size_t>(step)].node);
}

}  // namespace tamis::rules
