#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using Kind = flow::TimeReason::Kind;

/// What the later step takes that the earlier one made.
std::string name_of_kept(const Check& check, const flow::TimeReason& reason) {
  for (const int use : check.flow.steps[static_cast<std::size_t>(reason.step)].takes) {
    const flow::Thing& thing = check.flow.things[static_cast<std::size_t>(check.flow.uses[static_cast<std::size_t>(use)].thing)];
    if (thing.maker == reason.other && !thing.name.empty()) return quoted(thing.name);
  }
  return "what " + name_of_step(check, reason.other) + " makes";
}

std::string on_day(const char* what, std::optional<int> day) {
  return day ? std::string(what) + " on day " + std::to_string(*day) : std::string();
}

void say_one(Check& check, const Limits& limits, const std::vector<StatedSide>& sides) {
  const StatedSide* limit = limit_of(sides, {Kind::keep});
  if (limit == nullptr) return;
  const auto day = [&](int step) { return limits.times.days[static_cast<std::size_t>(step)]; };
  const auto made = day(limit->reason.other);
  const auto used = day(limit->reason.step);
  std::string message = name_of_kept(check, limit->reason) + " keeps " + time_words(limit->time) + ", and ";
  message += made && used ? "is made" + on_day("", made) + " and used" + on_day("", used)
                          : "is used at least " + time_words(needed(sides)) + " after it is made";
  base::Finding& finding = check.say(place_of(check, *limit), std::move(message),
                                     "make it later, use it sooner, or freeze it and say so in keep");
  finding.related.push_back({check.document.head_span(check.flow.steps[static_cast<std::size_t>(limit->reason.step)].node),
                             "used here", {}, {}, {}});
  relate(check, finding, sides, *limit);
}

void run(Check& check) {
  const std::optional<Limits>& limits = limits_of(check);
  if (!limits) return;
  for (const flow::TimeConflict& conflict : limits->conflicts) {
    if (is(*limits, conflict, Conflict::keep)) say_one(check, *limits, stated_sides(*limits, conflict));
  }
}

}  // namespace

/// What keeps two days and is used on day four.
const Rule kept_too_long = {
    .id = "kept-too-long",
    .severity = base::Severity::error,
    .topic = "order",
    .summary = "something used later than it keeps, by the recipe's own times",
    .explanation = R"(The cream keeps two days, is made on day 1 and goes into the cake on day 4: by the recipe's own figures it
must not be used. The limit that is held against is the author's; local rules and the person who answers for food
safety may ask for less.

Where the keeping note speaks of freezing, nothing is said. Days count from one working day to another, with the
night between.)",
    .bad = R"(    <step day="1" makes="cream" hands="10 min">Whip the cream.</step>
    <step day="4">Fill the cake with the <use of="cream">cream</use>.</step>
    <keep of="cream" where="fridge" at="at most 4 °C" for="2 days"/>)",
    .good = R"(    <step day="1" makes="cream" hands="10 min">Whip the cream.</step>
    <step day="2">Fill the cake with the <use of="cream">cream</use>.</step>
    <keep of="cream" where="fridge" at="at most 4 °C" for="2 days"/>)",
    .source = "the recipe's own keeping time; working hours of the kitchen file, else 05:00 to 23:00 (common practice)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
