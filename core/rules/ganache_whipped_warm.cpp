#include <algorithm>

#include "core/flow/stated_time.h"
#include "core/rules/figure_text.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::At;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double margin = 8;  // K above what cream whips at
constexpr double hour = 3600;

bool stands_cold(const Check& check, int step) {
  return does(check, step, {"chill", "cool", "rest", "set", "crystallise", "mature", "store", "keep"});
}

/// The longest that a step leaves it alone, where it says how long.
std::optional<double> left_alone(const Check& check, int step) {
  const flow::StepLength length = flow::read_length(check.fiche, check.flow.steps[at(step)].node);
  std::optional<double> out;
  for (const auto& part : {length.unattended, length.sentence}) {
    if (!part) continue;
    if (!part->most) return std::nullopt;
    out = std::max(out.value_or(0), static_cast<double>(*part->most));
  }
  return out;
}

/// The time that the ganache stands cold before it is whipped: in this step, or in the one before, the same day.
std::optional<double> rested(const Check& check, int step, const flow::Thing& ganache) {
  if (stands_cold(check, step)) return left_alone(check, step);
  const fiche::Node before = check.flow.steps[at(ganache.maker)].node, here = check.flow.steps[at(step)].node;
  const bool another_day = check.document.get(before, At::day) != check.document.get(here, At::day);
  if (another_day || check.document.find(here, At::at_least) != fiche::none || !stands_cold(check, ganache.maker))
    return std::nullopt;
  return left_alone(check, ganache.maker);
}

void look_at(Check& check, int step) {
  const FoodKinds& kinds = food_kinds(check);
  const unsigned here = kinds.steps[at(step)];
  const bool ganache =
      (here & kind::chocolate) != 0 && (here & kind::cream) != 0 && (here & (kind::egg | kind::thickener | kind::unknown)) == 0;
  if (!ganache || !does(check, step, {"whip", "whisk", "beat"}) ||
      does(check, step, {"melt", "heat", "boil", "mix", "emulsify"}))
    return;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::Thing& thing = check.flow.things[at(use.thing)];
    const unsigned in = kinds.things[at(use.thing)];
    if (!is_told(use) || thing.maker < 0 || (in & kind::chocolate) == 0 || (in & kind::cream) == 0) continue;
    const double celsius = check.states().uses[at(u)].celsius.low;
    if (celsius > figures::cream_whips.high + margin && !stands_cold(check, step)) {
      check.say(heat_span_of(check, use), "a ganache is whipped cold, and this goes to the whisk at " + degrees(celsius),
                "chill it overnight first, and whip it at about 5 °C: warm, its fat has not set and it splits");
    } else if (const auto time = rested(check, step, thing); time && *time < figures::ganache_rest.low * hour) {
      check.say(span_of(check, use),
                "a ganache rests cold for " + text_of(figures::ganache_rest) + " before it is whipped; this has " +
                    figure_text(*time, measure::Kind::time),
                "leave it in the fridge overnight: its cocoa butter must set for it to hold air");
    }
    return;
  }
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & kind::chocolate) == 0 || (all & kind::cream) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// A ganache whipped while it is warm, or after an hour.
const Rule ganache_whipped_warm = {
    .id = "ganache-whipped-warm",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a ganache that is whipped before it has rested cold",
    .explanation = R"(A whipped ganache is cream with chocolate in it, and whips as cream does: cold, its fat set.
Cocoa butter takes hours for that, so it stands in the fridge overnight, four hours at the least. Whipped warm it
stays soup, or grains.

Said of chocolate and cream that an earlier step has put together, where its temperature is known, or the one step of
chilling before it says how long. Silent over days, and with egg or starch in it.)",
    .bad = R"(    <ingredient id="cream" food="cream-35">300 g</ingredient>
    <ingredient id="chocolate" food="chocolate-white">120 g</ingredient>
    <step do="melt" on="hob" makes="ganache">Melt the <use of="chocolate">chocolate</use> in the hot <use of="cream">cream</use>
      at <food-temp>45 °C</food-temp>.</step>
    <step do="whip">Whip the <use of="ganache" at="35 °C">ganache</use> until it stands in soft peaks.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35">300 g</ingredient>
    <ingredient id="chocolate" food="chocolate-white">120 g</ingredient>
    <step do="melt" on="hob" makes="ganache">Melt the <use of="chocolate">chocolate</use> in the hot <use of="cream">cream</use>
      at <food-temp>45 °C</food-temp>.</step>
    <step do="chill" makes="rested" unattended="12 h">Chill the <use of="ganache">ganache</use> for <time of="unattended">12 h</time>.</step>
    <step do="whip">Whip the <use of="rested">ganache</use> until it stands in soft peaks.</step>)",
    .source = "common practice: overnight in the fridge",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
