#include <cmath>

#include "core/rules/figure_text.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using flow::Constituent;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr unsigned of_a_ganache = kind::chocolate | kind::cocoa | kind::cream | kind::milk | kind::butter | kind::sugar |
                                  kind::plain | kind::any_gelatine | kind::acid | kind::other;

bool is_ganache(const Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  const bool both = (kinds & kind::chocolate) != 0 && (kinds & (kind::cream | kind::milk | kind::acid | kind::other)) != 0;
  return both && (kinds & ~of_a_ganache) == 0 && is_called(check, step, {"ganache"});
}

void look_at(Check& check, int step) {
  const flow::State& state = check.states().steps[at(step)];
  if (!state.knows(Constituent::fat) || !state.knows(Constituent::water)) return;
  const flow::Range fat = state.share(Constituent::fat), water = state.share(Constituent::water);
  const flow::Use& use = check.flow.uses[at(check.flow.steps[at(step)].takes.front())];
  if (fat.low * 100 > figures::ganache_fat.high) {
    check.say(span_of(check, use),
              "the ganache has " + percent_text(fat.low * 100, fat.high * 100) + " fat; above " +
                  std::to_string(std::lround(figures::ganache_fat.high)) + " % it splits",
              "take less butter or chocolate, or more cream: it wants " + text_of(figures::ganache_fat) + " and " +
                  text_of(figures::ganache_water));
  } else if (water.high * 100 < figures::ganache_water.low) {
    check.say(span_of(check, use),
              "the ganache has " + percent_text(water.low * 100, water.high * 100) + " water; below " +
                  std::to_string(std::lround(figures::ganache_water.low)) +
                  " % there is too little to hold its fat, and it splits",
              "take more cream, or a spoonful of hot milk: it wants " + text_of(figures::ganache_water));
  } else if (water.low * 100 > figures::ganache_water.high) {
    check.say(span_of(check, use),
              "the ganache has " + percent_text(water.low * 100, water.high * 100) + " water; above " +
                  std::to_string(std::lround(figures::ganache_water.high)) + " % it stays a sauce",
              "take more chocolate, or call it a sauce: it wants " + text_of(figures::ganache_water));
  }
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::chocolate) == 0) return;
  std::vector<int> last;  // of each component the last step of the ganache that brings something in
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    const flow::Step& here = check.flow.steps[at(step)];
    if (here.takes.size() < 2 || !is_ganache(check, step) || !is_told(check.flow.uses[at(here.takes.front())])) continue;
    if (!last.empty() && check.flow.steps[at(last.back())].component == here.component) last.pop_back();
    last.push_back(step);
  }
  for (const int step : last) look_at(check, step);
}

}  // namespace

/// A ganache of chocolate, butter and hardly any cream.
const Rule ganache_out_of_balance = {
    .id = "ganache-out-of-balance",
    .severity = base::Severity::advice,
    .topic = "balance",
    .summary = "a ganache with too much fat, or too little or too much water, to hold together",
    .explanation = R"(A ganache is fat in water. One to cut and keep has 15 to 25 % of water and 25 to 40 of fat, one
to fill or whip up to 55 % of water. With too much fat for its water it splits, with too much water it runs.

Only where the recipe, its component or step calls it a ganache, and all of it is known. The lines are drawn wide: it
is advice, not a formula.)",
    .bad = R"(    <ingredient id="chocolate" food="chocolate-dark-70">300 g</ingredient>
    <ingredient id="butter" food="butter-unsalted">200 g</ingredient>
    <ingredient id="cream" food="cream-35">60 g</ingredient>
    <step do="melt" on="hob">For the ganache melt the <use of="chocolate">chocolate</use> with the <use of="butter">butter</use> in the
      <use of="cream">cream</use> at <food-temp>45 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="chocolate" food="chocolate-dark-70">300 g</ingredient>
    <ingredient id="butter" food="butter-unsalted">40 g</ingredient>
    <ingredient id="cream" food="cream-35">280 g</ingredient>
    <step do="melt" on="hob">For the ganache melt the <use of="chocolate">chocolate</use> with the <use of="butter">butter</use> in the
      <use of="cream">cream</use> at <food-temp>45 °C</food-temp>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
