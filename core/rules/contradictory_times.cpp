#include "core/rules/registry.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using Kind = flow::TimeReason::Kind;

void say_one(Check& check, const std::vector<StatedSide>& sides) {
  const StatedSide* limit = limit_of(sides, {Kind::wait, Kind::within});
  if (limit == nullptr) return;
  const std::string later = name_of_step(check, limit->reason.step);
  const std::string earlier = name_of_step(check, limit->reason.other);
  const std::string most = time_words(limit->time);
  const bool alone = sides.size() == 2 && sides[0].reason.node == sides[1].reason.node && sides[0].reason.kind == Kind::wait;
  base::Finding& finding =
      alone ? check.say(place_of(check, *limit),
                        later + " is to come at least " + time_words(needed(sides)) + " and at most " + most + " after " + earlier,
                        "correct one of the two times")
            : check.say(place_of(check, *limit),
                        later + " is to come at most " + most + " after " + earlier + ", and at least " +
                            time_words(needed(sides)) + " must lie between",
                        "give it more time, or do what lies between before " + earlier);
  relate(check, finding, sides, *limit);
}

void run(Check& check) {
  const std::optional<Limits>& limits = limits_of(check);
  if (!limits) return;
  for (const flow::TimeConflict& conflict : limits->conflicts) {
    if (is(*limits, conflict, Conflict::limits)) say_one(check, stated_sides(*limits, conflict));
  }
}

}  // namespace

/// At-most and at-least, lengths and waits that cannot all be kept.
const Rule contradictory_times = {
    .id = "contradictory-times",
    .severity = base::Severity::error,
    .topic = "order",
    .summary = "times between steps that cannot all be kept",
    .explanation = R"(A step must follow another within half an hour, and what has to be done between takes fifty minutes: one of
the figures is wrong, or the order is. Kept by the letter, the recipe cannot be made.

Lengths count with the least that they may take, waiting is always allowed, and steps that some leave out count as
nothing. The places that make up the contradiction are shown with the finding.)",
    .bad = R"(    <step id="glaze" makes="glaze">Melt the glaze.</step>
    <step makes="cool-glaze" unattended="50 min">Cool the <use of="glaze">glaze</use>.</step>
    <step after="glaze" at-most="30 min">Pour the <use of="cool-glaze">glaze</use> over the cake.</step>)",
    .good = R"(    <step id="glaze" makes="glaze">Melt the glaze.</step>
    <step makes="cool-glaze" unattended="20 min">Cool the <use of="glaze">glaze</use>.</step>
    <step after="glaze" at-most="30 min">Pour the <use of="cool-glaze">glaze</use> over the cake.</step>)",
    .source = "simple temporal network: R. Dechter, I. Meiri, J. Pearl, Temporal constraint networks, Artificial Intelligence 49 (1991)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
