#include "core/rules/figure_text.h"
#include "core/rules/figure_value.h"
#include "core/rules/gate_steps.h"
#include "core/rules/gelatine_share.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using flow::Constituent;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double spare_low = 0.2;                           // % of the water: what only thickens a sauce or holds a cream up
constexpr double spare_high = 2;                            // %
constexpr double most_of_sweets = 30;                       // % of the water: marshmallow and gums, which hold little
constexpr double sweets_from = 0.4;                         // of the mix sugar
constexpr double lightest_leaf = 1.2, heaviest_leaf = 5.5;  // g: what packs hold

/// Leaves of another weight than any leaf has: count-and-mass-disagree says so.
bool leaves_disagree(const Check& check, const flow::Thing& thing) {
  const fiche::Statement* leaves = check.fiche.statement(thing.node, fiche::At::pieces);
  if (leaves == nullptr || !leaves->amount || !leaves->amount->has_figure() || !thing.grams) return false;
  const double each = thing.grams->middle() / highest_of(*leaves->amount);
  return each < lightest_leaf || each > heaviest_leaf;
}

/// Whether the step only puts the set thing together with others, or goes on with it alone.
bool puts_together(const Check& check, int step) {
  return does(check, step,
              {"assemble", "pipe", "glaze", "fill", "place", "arrange", "garnish", "finish", "top", "spread", "soak", "bloom",
               "dip", "coat"});
}

/// The step in which the mix that the gelatine sets is complete: the last of its component that stirs something in.
int last_of_the_mix(const Check& check, int first) {
  int last = first;
  for (int step = first + 1; step < static_cast<int>(check.flow.steps.size()); ++step) {
    const flow::Step& here = check.flow.steps[at(step)];
    if (here.component != check.flow.steps[at(first)].component ||
        (food_kinds(check).steps[at(step)] & kind::any_gelatine) == 0)
      continue;
    if (here.takes.size() > 1 && !puts_together(check, step)) last = step;
  }
  return last;
}

/// "; 440 g of water take 2.64 to 22 g", where the mass is known.
std::string for_so_much_water(const flow::State& state) {
  if (!state.grams) return {};
  const double water = state.grams->middle() * state.share(Constituent::water).middle();
  const auto grams = [water](double percent) { return figure_text(water * percent / 100, measure::Kind::mass); };
  return "; " + grams(100) + " of water take " + grams(figures::gelatine_dose.low) + " to " +
         grams(figures::gelatine_dose.high);
}

void judge(Check& check, int step, const flow::Use& use) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  const flow::State& state = check.states().steps[at(step)];
  if (!state.knows(Constituent::water) || state.share(Constituent::water).low <= 0.05) return;
  const auto gelatine = gelatine_share(check, step);
  if (!gelatine) return;
  const double low = 100 * gelatine->low / state.share(Constituent::water).high,
               high = 100 * gelatine->high / state.share(Constituent::water).low;
  const TradeFigure& usual = figures::gelatine_dose;
  const bool sweets = state.share(Constituent::sugars).high >= sweets_from;
  const bool alone =
      (kinds & (kind::unknown | kind::other_setting | kind::chocolate | kind::egg | kind::thickener | kind::sour_dairy)) == 0 &&
      state.air != flow::Action::Air::in && state.share(Constituent::fat).high < 0.2;
  const bool little = alone && high < usual.low - spare_low;
  const bool much = low > (sweets ? most_of_sweets : usual.high + spare_high);
  if (!little && !much) return;
  const std::string hint = little ? "weigh it again: it will not hold its shape" : "weigh it again: it will be rubber";
  check.say(span_of(check, use),
            "the gelatine, counted at 200 bloom, is " + percent_text(low, high) + " of the water it sets; " + text_of(usual) +
                " is usual",
            hint + for_so_much_water(state));
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::any_gelatine) == 0) return;
  std::vector<char> judged(check.flow.steps.size(), 0);
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    if (thing.kind != flow::Thing::Kind::ingredient || (food_kinds(check).things[i] & kind::any_gelatine) == 0 ||
        thing.uses.empty())
      continue;
    const flow::Use& use = check.flow.uses[at(thing.uses.front())];
    if (!is_told(use) || leaves_disagree(check, thing)) continue;
    const int step = last_of_the_mix(check, use.step);
    if (judged[at(step)] != 0 || (food_kinds(check).steps[at(step)] & ~(kind::any_gelatine | kind::plain)) == 0) continue;
    judged[at(step)] = 1;
    judge(check, step, use);
  }
}

}  // namespace

/// Ten times the gelatine that a jelly takes.
const Rule gelatine_out_of_dose = {
    .id = "gelatine-out-of-dose",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "far too little or too much gelatine for the water it has to set",
    .explanation = R"(Gelatine sets water. At 200 bloom a cream takes about 1 % of its water, a jelly to turn out 1.5
to 3, a glaze up to 5; a strong one goes further, by the root of the strengths (the linear rule of some packs differs
little here). A point in the wrong place makes soup or rubber.

The dose is worked out from all that the gelatine is stirred into. Too little is said only where nothing else holds
it: no egg, starch, chocolate, cheese, other setting agent, air or much fat; too much counts from 7 % of the water, in
sweets such as marshmallow from 30. A strength nobody states is taken for 200 bloom.)",
    .bad = R"(    <ingredient id="juice" food="apple-juice" at="60 °C">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" bloom="200" prep="soaked, wrung out">60 g</ingredient>
    <step do="dissolve">Dissolve the <use of="leaf">gelatine</use> in the <use of="juice">juice</use>.</step>)",
    .good = R"(    <ingredient id="juice" food="apple-juice" at="60 °C">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" bloom="200" prep="soaked, wrung out">9 g</ingredient>
    <step do="dissolve">Dissolve the <use of="leaf">gelatine</use> in the <use of="juice">juice</use>.</step>)",
    .source = "common practice: 0.8 to 5 % of the water at 200 bloom; strengths by the Gelatin Handbook (GMIA), from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
