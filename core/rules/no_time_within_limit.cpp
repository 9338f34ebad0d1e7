#include <algorithm>

#include "core/rules/registry.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using Kind = flow::TimeReason::Kind;
using Seconds = flow::TimeNetwork::Seconds;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Whether some leave the step out, or another person does it.
bool may_be_elsewhere(const Check& check, int step, int later) {
  const fiche::Node node = check.flow.steps[at(step)].node;
  for (const fiche::At mark : {fiche::At::optional, fiche::At::when, fiche::At::branch, fiche::At::batch}) {
    if (check.document.find(node, mark) != fiche::none) return true;
  }
  const std::string_view who = check.document.get(node, fiche::At::who);
  return !who.empty() && who != check.document.get(check.flow.steps[at(later)].node, fiche::At::who);
}

struct HandsOn {
  Seconds time = 0;
  std::vector<int> steps;
};

/// Hands-on work that stands between the two in their component, and in the later one where the limit is on its work.
HandsOn work_between(const Check& check, const Limits& limits, const flow::TimeReason& reason) {
  HandsOn out;
  const auto take = [&](int step) {
    const auto& hands = limits.times.lengths[at(step)].hands;
    if (!hands || hands->least == 0) return;
    out.time += hands->least;
    out.steps.push_back(step);
  };
  for (int step = reason.other + 1; step < reason.step; ++step) {
    if (check.flow.steps[at(step)].component != check.flow.steps[at(reason.step)].component) continue;
    if (!may_be_elsewhere(check, step, reason.step)) take(step);
  }
  if (reason.kind == Kind::within) take(reason.step);
  return out;
}

bool told_already(const Limits& limits, int constraint) {
  return std::any_of(limits.conflicts.begin(), limits.conflicts.end(), [&](const flow::TimeConflict& conflict) {
    return std::any_of(conflict.sides.begin(), conflict.sides.end(),
                       [&](flow::TimeNetwork::Side side) { return side.constraint == constraint; });
  });
}

void look_at(Check& check, const Limits& limits, int constraint) {
  const flow::TimeReason& reason = limits.times.reasons[at(constraint)];
  const auto most = limits.times.network.constraints()[at(constraint)].most;
  const bool limit = reason.kind == Kind::wait || reason.kind == Kind::within;
  if (!limit || !most || reason.other < 0 || told_already(limits, constraint)) return;
  if (check.flow.steps[at(reason.other)].component != check.flow.steps[at(reason.step)].component) return;
  const HandsOn work = work_between(check, limits, reason);
  if (work.time <= *most) return;
  const bool own = work.steps == std::vector<int>{reason.step};
  const std::string later = name_of_step(check, reason.step);
  const StatedSide side{reason, false, *most};
  base::Finding& finding =
      check.say(place_of(check, side),
                own ? later + " is to be done within " + time_words(*most) + ", and takes " + time_words(work.time) + " of hands-on work"
                    : later + " is to follow " + name_of_step(check, reason.other) + " within " + time_words(*most) + ", and " +
                          time_words(work.time) + " of hands-on work stands between",
                own ? "give it more time, work with another pair of hands, or in smaller batches"
                    : "do that work before, or say who does it meanwhile (who)");
  for (const int step : work.steps) {
    if (own) break;
    const auto* hands = check.fiche.statement(check.flow.steps[at(step)].node, fiche::At::hands);
    if (hands != nullptr) finding.related.push_back({hands->where, "hands-on work", {}, {}, {}});
  }
}

void run(Check& check) {
  const std::optional<Limits>& limits = limits_of(check);
  if (!limits) return;
  for (int i = 0; i < static_cast<int>(limits->times.reasons.size()); ++i) look_at(check, *limits, i);
}

}  // namespace

/// "Within 10 minutes", and more hands-on work than that stands between.
const Rule no_time_within_limit = {
    .id = "no-time-within-limit",
    .severity = base::Severity::warning,
    .topic = "order",
    .summary = "a limit that the hands-on work before it leaves no time for",
    .explanation = R"(The glaze is to be poured within ten minutes, and between melting and pouring the card has fifteen minutes of
lining and unmoulding: one cook, working down the card, comes too late.

The hands-on time of the steps between is added up within one component. Steps that another person does (who), that
are optional or of another branch do not count, and what must pass between in any case is said by
contradictory-times.)",
    .bad = R"(    <ingredient id="frozen" name="frozen cakes">1.2 kg</ingredient>
    <step id="melt" makes="glaze" hands="5 min">Melt the glaze.</step>
    <step makes="cake" hands="15 min">Unmould the <use of="frozen">cakes</use> and set them on racks.</step>
    <step after="melt" at-most="10 min" hands="5 min">Pour the <use of="glaze">glaze</use> over the <use of="cake">cakes</use>.</step>)",
    .good = R"(    <ingredient id="frozen" name="frozen cakes">1.2 kg</ingredient>
    <step makes="cake" hands="15 min">Unmould the <use of="frozen">cakes</use> and set them on racks.</step>
    <step id="melt" makes="glaze" hands="5 min">Melt the glaze.</step>
    <step after="melt" at-most="10 min" hands="5 min">Pour the <use of="glaze">glaze</use> over the <use of="cake">cakes</use>.</step>)",
    .source = "the recipe's own times, for one pair of hands",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
