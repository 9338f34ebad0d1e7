#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/flow/point.h"
#include "core/rules/figure_text.h"
#include "core/rules/contents.h"
#include "core/rules/heated.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::El;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Yeast that a mark takes.
bool is_yeast(const Check& check, const flow::Use& use) {
  const flow::Thing& thing = check.flow.things[at(use.thing)];
  if (thing.ingredient < 0 || use.mark == fiche::none) return false;
  const food::Food* food = check.fiche.ingredients[at(thing.ingredient)].food;
  return food != nullptr && food->role == food::Role::yeast;
}

std::string celsius_text(double celsius) { return figure_text(std::round(celsius), measure::Kind::temperature); }
/// What the step says up to the last thing it takes, where its temperature is no longer that of the mark.
std::string words_up_to_the_last(const Check& check, const flow::Step& step) {
  fiche::Node last = fiche::none;
  for (const int use : step.takes) {
    fiche::Node mark = check.flow.uses[at(use)].mark;
    while (mark != fiche::none && check.document.parent(mark) != step.node) mark = check.document.parent(mark);
    if (mark != fiche::none && (last == fiche::none || mark > last)) last = mark;
  }
  std::string out;
  for (fiche::Node c = check.document.first_child(step.node); c != fiche::none; c = check.document.next(c)) {
    out += check.document.all_text(c) + " ";
    if (c == last) break;
  }
  return base::lower(out);
}

/// Where the yeast goes in: what it meets there, as it goes in, comes together above the heat that kills it.
void look_at_mix(Check& check, int step) {
  const flow::Step& here = check.flow.steps[at(step)];
  int yeast = -1;
  for (const int use : here.takes) {
    if (is_yeast(check, check.flow.uses[at(use)])) yeast = use;
  }
  if (yeast < 0) return;
  const std::string words = words_up_to_the_last(check, here);
  if (flow::says_to_cool(words) || says_cooling(words)) return;
  const flow::States& states = check.states();
  std::vector<flow::Point> points;
  points.reserve(here.takes.size());
  std::vector<flow::Going> goings;
  for (const int use : here.takes) {
    const flow::Use& one = check.flow.uses[at(use)];
    if (one.instead || !check.flow.things[at(one.thing)].counts) continue;
    const flow::State& state = states.uses[at(use)];
    if (!state.grams) return;
    points.push_back(flow::point_of(state));
    goings.push_back({&points.back(), (state.grams->low + state.grams->high) / 2, one.thing});
  }
  const flow::Range celsius = flow::mix_celsius(goings).celsius;
  if (std::isinf(celsius.low) || celsius.low < figures::yeast_dies.low) return;
  const std::string range = std::round(celsius.low) == std::round(celsius.high)
                                ? celsius_text(celsius.low)
                                : std::to_string(std::lround(celsius.low)) + "–" + celsius_text(celsius.high);
  check.say(check.document.head_span(check.flow.uses[at(yeast)].mark),
            "the yeast goes into what is at " + range + ": it dies from " + celsius_text(figures::yeast_dies.low) + " on",
            "let it cool to 40 °C first, or put the yeast in with the flour");
}

/// Where dough proves: heat stated for it, or around it.
void look_at_proof(Check& check, int step) {
  const flow::Step& here = check.flow.steps[at(step)];
  const auto& actions = check.fiche.steps[at(here.index)].actions;
  const bool proves = !actions.empty() && std::all_of(actions.begin(), actions.end(), [](std::string_view word) {
    return word == "proof" || word == "prove" || word == "ferment" || word == "rise" || word == "rest" || word == "knead";
  });
  if (!proves) return;
  for (const StatedHeat& heat : stated_heats(check, here.node)) {
    if (!heat.low || *heat.low < figures::yeast_dies.low || *heat.low > 100) continue;
    if (!contents_of(check, step).has(food::Role::yeast) || heated_before(check, step, food::Role::yeast)) return;
    check.say(
        heat.statement->where,
        heat.statement->text + " kills the yeast in the dough: it dies from " + celsius_text(figures::yeast_dies.low) + " on",
        "prove at 24 to 38 °C");
    return;
  }
}

void run(Check& check) {
  if (!lists(check, food::Role::yeast)) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    look_at_mix(check, step);
    look_at_proof(check, step);
  }
}

}  // namespace

/// Yeast put into what kills it, and dough proved where it dies.
const Rule yeast_killed = {
    .id = "yeast-killed",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "yeast put into something hotter than it survives, or dough proved there",
    .explanation = R"(Yeast dies between 55 and 60 °C, and the dough never rises. What counts is what the yeast meets: hot milk
over cold flour may come to 35 °C, and hot milk alone does not.

The mix is worked out from what goes in with the yeast, by weight and heat capacity; where one of them is not known, or
the step says to let it cool first, nothing is said. Of proving, the temperature stated for the dough or around it is
held against the same figure.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole" at="65 °C">500 g</ingredient>
    <ingredient id="yeast" food="yeast-fresh">20 g</ingredient>
    <step>Stir the <use of="yeast">yeast</use> into the <use of="milk">hot milk</use>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole" at="35 °C">500 g</ingredient>
    <ingredient id="yeast" food="yeast-fresh">20 g</ingredient>
    <step>Stir the <use of="yeast">yeast</use> into the <use of="milk">warm milk</use>.</step>)",
    .source = "common practice: baker's yeast dies between 55 and 60 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
