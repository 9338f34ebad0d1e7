#include <cmath>

#include "core/rules/figure_text.h"
#include "core/rules/heated.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using flow::Constituent;
using flow::Range;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

std::string bounds_text(const TradeFigure& figure) {
  return std::to_string(std::lround(figure.low)) + " to " + std::to_string(std::lround(figure.high)) + " %";
}

/// ", and begins to freeze at -1.2 °C": where the mix is known well enough.
std::string freezing_text(const flow::State& mix) {
  const auto makeup = flow::makeup_of(mix);
  if (!makeup) return {};
  const double likely = std::round(10 * food::freezing_point(*makeup).likely) / 10;
  return "; it begins to freeze at " + figure_text(likely, measure::Kind::temperature);
}

struct Balance {
  Check& check;
  const flow::State& mix;
  fiche::Node step;
  bool said = false;

  /// True where the share is known, and wholly outside of what such a mix has.
  void hold(const Range& share, const TradeFigure& figure, const std::string& what, const char* too_little,
            const char* too_much) {
    if (said || share.width() > 0.1) return;
    const bool little = share.high * 100 < figure.low, much = share.low * 100 > figure.high;
    if (!little && !much) return;
    said = true;
    check.say(check.document.head_span(step),
              "the mix that is churned has " + percent_text(share.low * 100, share.high * 100) + " of " + what + ", and such an ice takes " +
                  bounds_text(figure) + freezing_text(mix),
              little ? too_little : too_much);
  }
};

Range solids_of(const flow::State& mix) {
  const Range &water = mix.share(Constituent::water), &alcohol = mix.share(Constituent::alcohol);
  return {1 - water.high - alcohol.high, 1 - water.low - alcohol.low};
}

void look_at_balance(Check& check, int step) {
  const flow::State& mix = check.states().steps[at(step)];
  if (!mix.has(food::Role::sugar)) return;  // cream that is churned to butter
  if (!mix.knows(Constituent::water) || !mix.knows(Constituent::fat)) return;
  Balance balance{check, mix, check.flow.steps[at(step)].node};
  const bool milk_or_egg = mix.has(food::Role::dairy) || mix.has(food::Role::egg);
  const bool sorbet = !milk_or_egg && mix.share(Constituent::fat).high < 0.02;
  if (!sorbet && (!milk_or_egg || mix.share(Constituent::fat).high < 0.02)) return;  // sherbet, chocolate sorbet: neither
  const bool savoury = mix.has(food::Role::vegetable) || mix.share(Constituent::salt).low > 0.005;
  balance.hold(mix.share(Constituent::alcohol), figures::ices_alcohol, "alcohol", "",
               "it will not freeze firm: flame the spirit off, or take less");
  if (!savoury)
    balance.hold(mix.share(Constituent::sugars), sorbet ? figures::sorbet_sugars : figures::ice_cream_sugars, "sugars",
                 "it freezes like stone: more sugar, or churn and serve at once",
                 "it stays soft and melts fast: less sugar, or part of it as glucose syrup");
  if (!sorbet) {
    balance.hold(mix.share(Constituent::fat), figures::ice_cream_fat, "fat", "it eats icy: more cream",
                 "it coats the mouth and may churn to butter: less cream, more milk");
  }
  balance.hold(solids_of(mix), sorbet ? figures::sorbet_solids : figures::ice_cream_solids, "solids",
               "too much water for a smooth ice: reduce it, or add milk powder or glucose powder",
               "too little water: it eats heavy and sandy");
}

/// The temperature it is drawn at, as stated.
void look_at_draw(Check& check, int step) {
  constexpr double margin = 4;  // K: soft machines and hard ones
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    if (heat.el != fiche::El::food_temp || !heat.low || !heat.high || *heat.low >= 0) continue;
    if (*heat.low <= figures::ices_draw.high + margin && *heat.high >= figures::ices_draw.low - margin) continue;
    check.say(heat.statement->where, "an ice is drawn from the machine at -6 to -4 °C, not at " + heat.statement->text,
              "draw it there and harden it in the freezer");
    return;
  }
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    if (!does(check, step, {"churn"})) continue;
    look_at_balance(check, step);
    look_at_draw(check, step);
  }
}

}  // namespace

/// A mix for ice cream or sorbet with too little or too much sugar, fat, solids or alcohol.
const Rule churned_out_of_balance = {
    .id = "churned-out-of-balance",
    .severity = base::Severity::advice,
    .topic = "balance",
    .summary = "an ice cream or sorbet with far more or less sugar, fat, solids or alcohol than usual",
    .explanation = R"(Sugar decides how soft an ice is at the temperature it is served at, solids how smooth. A sorbet has 24 to
30 % of sugars and about a third of solids, an ice cream 15 to 22 % of sugars, 4 to 16 % of fat and about two fifths of
solids. Beyond that an ice is stone, slush or sand.

Held against wide bounds is the mix as it goes into the machine, by what all of it is made of: those of a sorbet where
there is neither milk nor egg nor fat, those of an ice cream where there is milk or egg and fat; sherbets, savoury ices and
butter go their own ways. Where the composition of a part is not known, and where nothing is churned, nothing is said. One thing is
said of a mix, the first that is out.)",
    .bad = R"(    <ingredient id="lemon" food="lemon-juice">500 g</ingredient>
    <ingredient id="water" food="water">700 g</ingredient>
    <ingredient id="sugar" food="sugar-white">120 g</ingredient>
    <step do="stir">Stir the <use of="sugar">sugar</use> into the <use of="lemon">juice</use> and <use of="water">water</use>.</step>
    <step do="churn">Churn.</step>)",
    .good = R"(    <ingredient id="lemon" food="lemon-juice">500 g</ingredient>
    <ingredient id="water" food="water">700 g</ingredient>
    <ingredient id="sugar" food="sugar-white">480 g</ingredient>
    <step do="stir">Stir the <use of="sugar">sugar</use> into the <use of="lemon">juice</use> and <use of="water">water</use>.</step>
    <step do="churn">Churn.</step>)",
    .source = "common practice: balances of mixes as pastry schools teach them",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
