#include <cmath>

#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double spare_low = 0.2, spare_high = 0.7;  // times the white

bool is_named(const Check& check, int step) {
  return is_called(check, step,
                   {"swiss meringue", "meringue suisse", "schweizer meringue", "schweizer baiser", "merengue suizo",
                    "italian meringue", "meringue italienne", "italienische meringue", "merengue italiano", "french meringue",
                    "meringue française", "französische meringue", "merengue francés"});
}

std::string tenths(double value) {
  const auto rounded = std::lround(value * 10);
  return std::to_string(rounded / 10) + (rounded % 10 == 0 ? "" : "." + std::to_string(rounded % 10));
}

/// The white that the step takes, for the place.
const flow::Use* white_of(const Check& check, int step) {
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if ((food_kinds(check).things[at(use.thing)] & kind::white) != 0 && is_told(use)) return &use;
  }
  return nullptr;
}

/// Whether what it makes is the whole meringue: no later step of its component brings more sugar.
bool more_sugar_later(const Check& check, int step) {
  const unsigned here = food_kinds(check).steps[at(step)];
  for (int later = step + 1; later < static_cast<int>(check.flow.steps.size()); ++later) {
    if (check.flow.steps[at(later)].component != check.flow.steps[at(step)].component) continue;
    const unsigned then = food_kinds(check).steps[at(later)];
    if ((then & kind::white) != 0 && does(check, later, {"whip", "whisk", "beat", "add", "pour", "fold", "mix"}) &&
        (then & ~here) == 0)
      return true;
  }
  return false;
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & kind::white) == 0 || (all & kind::sugar) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    const unsigned kinds = food_kinds(check).steps[at(step)];
    if ((kinds & kind::white) == 0 || (kinds & kind::sugar) == 0 ||
        (kinds & ~(kind::white | kind::sugar | kind::plain | kind::acid)) != 0)
      continue;
    const flow::Use* use = white_of(check, step);
    if (use == nullptr || !is_named(check, step) || more_sugar_later(check, step)) continue;
    const auto white = share_of_kinds(check, step, kind::white), sugar = share_of_kinds(check, step, kind::sugar);
    if (!white || !sugar || white->low <= 0) return;
    const TradeFigure& usual = figures::meringue_sugar;
    const bool little = sugar->high / white->low < usual.low - spare_low;
    const bool much = sugar->low / white->high > usual.high + spare_high;
    if (!little && !much) continue;
    check.say(span_of(check, *use),
              "a meringue has " + text_of(usual) + " in sugar; this has " + tenths(sugar->middle() / white->middle()),
              little ? "100 g of white take 100 to 200 g: with so little sugar it does not dry crisp, and weeps"
                     : "100 g of white take 100 to 200 g: so much sugar does not dissolve in it");
    return;
  }
}

}  // namespace

/// An Italian meringue with half its white in sugar.
const Rule meringue_out_of_proportion = {
    .id = "meringue-out-of-proportion",
    .severity = base::Severity::advice,
    .topic = "balance",
    .summary = "a French, Swiss or Italian meringue with far too little or too much sugar for its white",
    .explanation = R"(A French meringue has once to twice its white in sugar, a Swiss or Italian one 1.5 to 2.3 times.
Less, and it is a foam that weeps; more, and the sugar stays in grains. Only where the recipe calls it a French, Swiss
or Italian meringue: dacquoise, soufflés and beaten whites for folding have ratios of their own.)",
    .bad = R"(    <ingredient id="whites" food="egg-white">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">40 g</ingredient>
    <step do="whip">For the French meringue whip the <use of="whites">whites</use> with the <use of="sugar">sugar</use> until the
      peak stands.</step>)",
    .good = R"(    <ingredient id="whites" food="egg-white">100 g</ingredient>
    <ingredient id="sugar" food="sugar-white">180 g</ingredient>
    <step do="whip">For the French meringue whip the <use of="whites">whites</use> with the <use of="sugar">sugar</use> until the
      peak stands.</step>)",
    .source = "common practice: French 1 to 2, Swiss and Italian 1.5 to 2.3 times the white",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
