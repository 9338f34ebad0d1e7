#include "core/rules/registry.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using Kind = flow::TimeReason::Kind;

const StatedSide* first_day_of(const std::vector<StatedSide>& sides) {
  for (const StatedSide& side : sides) {
    if (side.least && side.reason.kind == Kind::day) return &side;
  }
  return nullptr;
}

void say_one(Check& check, const Limits& limits, const std::vector<StatedSide>& sides) {
  const StatedSide* limit = limit_of(sides, {Kind::day});
  const StatedSide* from = first_day_of(sides);
  if (limit == nullptr || from == nullptr) return;
  const auto day = limits.times.days[static_cast<std::size_t>(limit->reason.step)];
  const auto start = from->time / 86400 + 1;
  const std::string later = name_of_step(check, limit->reason.step);
  const std::string earlier = name_of_step(check, from->reason.step);
  const std::string on = " is on day " + std::to_string(day.value_or(0));
  base::Finding& finding =
      day && start > *day
          ? check.say(place_of(check, *limit), later + on + " and waits for " + earlier + ", which is on day " + std::to_string(start),
                      "give it that day or a later one, or do the other sooner")
          : check.say(place_of(check, *limit), later + on + ", and what it waits for since day " + std::to_string(start) + " is not done by then",
                      "give it a later day, or begin sooner");
  relate(check, finding, sides, *limit);
}

void run(Check& check) {
  const std::optional<Limits>& limits = limits_of(check);
  if (!limits) return;
  for (const flow::TimeConflict& conflict : limits->conflicts) {
    if (is(*limits, conflict, Conflict::days)) say_one(check, *limits, stated_sides(*limits, conflict));
  }
}

}  // namespace

/// A step on an earlier day than what it waits for.
const Rule days_out_of_order = {
    .id = "days-out-of-order",
    .severity = base::Severity::error,
    .topic = "order",
    .summary = "a step on an earlier day than what it waits for, or than that can be done",
    .explanation = R"(The mousse is on day 1 and takes the insert that is frozen on day 2; or twenty hours of work and rest stand
on one day. A plan for the week is made from these figures.

A component's day is that on which its work begins; what follows after six hours of it may be later.)",
    .bad = R"(    <step day="2" makes="insert">Fill the insert.</step>
    <step day="1">Put the <use of="insert">insert</use> into the mousse.</step>)",
    .good = R"(    <step day="1" makes="insert">Fill the insert.</step>
    <step day="2">Put the <use of="insert">insert</use> into the mousse.</step>)",
    .source = "the recipe's own days; working hours of the kitchen file, else 05:00 to 23:00 (common practice)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
