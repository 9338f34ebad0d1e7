#include "core/rules/registry.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using Kind = flow::TimeReason::Kind;

void say_one(Check& check, const Limits& limits, const std::vector<StatedSide>& sides) {
  const StatedSide* limit = limit_of(sides, {Kind::day});
  const StatedSide* night = nullptr;
  for (const StatedSide& side : sides) {
    if (side.reason.kind == Kind::night) night = &side;
  }
  if (limit == nullptr || night == nullptr) return;
  const auto day = [&](int step) { return std::to_string(limits.times.days[static_cast<std::size_t>(step)].value_or(0)); };
  base::Finding& finding = check.say(
      place_of(check, *limit),
      name_of_step(check, limit->reason.step) + " is on day " + day(limit->reason.step) + ", and what it waits for rests overnight from day " +
          day(night->reason.step) + ": " + name_of_step(check, night->reason.step),
      "put it on the next day, or state the rest in hours");
  relate(check, finding, sides, *limit);
}

void run(Check& check) {
  const std::optional<Limits>& limits = limits_of(check);
  if (!limits) return;
  for (const flow::TimeConflict& conflict : limits->conflicts) {
    if (is(*limits, conflict, Conflict::night)) say_one(check, *limits, stated_sides(*limits, conflict));
  }
}

}  // namespace

/// "Overnight", and what comes after it is on the same day.
const Rule overnight_against_days = {
    .id = "overnight-against-days",
    .severity = base::Severity::error,
    .topic = "order",
    .summary = "an overnight rest, and the step behind it on the same day",
    .explanation = R"(What rests overnight is not ready before the next morning. When the step that takes it stands on the same
day, the day or the rest is wrong, and whoever plans from the card finds out in the evening.

"Overnight or at least 4 h" leaves the choice and is let be.)",
    .bad = R"(    <step day="1" makes="dough" unattended="overnight">Rest the dough in the fridge.</step>
    <step day="1">Roll out the <use of="dough">dough</use>.</step>)",
    .good = R"(    <step day="1" makes="dough" unattended="overnight">Rest the dough in the fridge.</step>
    <step day="2">Roll out the <use of="dough">dough</use>.</step>)",
    .source = "common practice: a night lies between",
    .schemas = "",
    .kitchen = R"(<means word="overnight" time="10 to 16 h"/>)",
    .run = run,
};

}  // namespace tamis::rules
