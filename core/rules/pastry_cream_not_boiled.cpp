#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::El;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double nearly_boils = 5;  // K: thick cream bubbles when the probe says 95

bool is_pastry_cream(const Check& check, int step, unsigned kinds) {
  const bool all_there =
      (kinds & (kind::yolk | kind::whole_egg)) != 0 && (kinds & kind::milk) != 0 && (kinds & kind::thickener) != 0;
  if (!all_there || (kinds & (kind::unknown | kind::other)) != 0) return false;
  const auto liquid = share_of_kinds(check, step, kind::milk | kind::cream);
  const auto dry = share_of_kinds(check, step, kind::thickener);
  return liquid && dry && liquid->low >= 0.45 && dry->low >= 0.02 && dry->high <= 0.15;
}

void look_at(Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  if ((kinds & kind::egg) == 0 || (kinds & kind::thickener) == 0) return;
  const StatedHeat* last = nullptr;
  for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
    if (heat.el == El::food_temp && heat.low && heat.high && !says_cooling(heat.before) && !is_of_a_use(check, step, heat))
      last = &heat;
  }
  if (last == nullptr || *last->high < figures::starch_maize.low ||
      *last->high >= figures::pastry_cream_boils.low - nearly_boils)
    return;
  if (!heats_in_the_pan(check, step) || boils(check, step) || !is_pastry_cream(check, step, kinds) || heated_later(check, step))
    return;
  check.say(
      last->statement->where,
      "egg and starch together must boil, and this stops at " + said(*last) + ": the yolk's amylase thins the cream again",
      "bring it to the boil and keep it there for a minute, whisking; with starch in it the egg does not curdle");
}

void run(Check& check) {
  const unsigned all = food_kinds(check).all;
  if ((all & kind::egg) == 0 || (all & kind::thickener) == 0 || (all & kind::milk) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Pastry cream taken off at 84 °C, as if it were a custard.
const Rule pastry_cream_not_boiled = {
    .id = "pastry-cream-not-boiled",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "egg, milk and starch that are cooked and not brought to the boil",
    .explanation = R"(A custard without starch must not boil, one with starch must: yolk brings an enzyme that takes
starch apart, and only the boil ends it. A pastry cream taken off at 84 °C stands firm in the evening and runs in the
morning. Some potato and modified starches are made to be used below the boil; their pack says so, and then this rule
can be switched off.

Said of a step that stirs milk, egg and starch or flour in a pan to a figure between where starch swells and the boil,
where neither the step nor a later one boils or bakes it.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">100 g</ingredient>
    <ingredient id="starch" food="starch-maize">40 g</ingredient>
    <step do="cook" on="hob">Whisk the <use of="milk">milk</use>, <use of="yolks">yolks</use> and
      <use of="starch">starch</use> over the heat to <food-temp>84 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="yolks" food="egg-yolk">100 g</ingredient>
    <ingredient id="starch" food="starch-maize">40 g</ingredient>
    <step do="boil" on="hob">Whisk the <use of="milk">milk</use>, <use of="yolks">yolks</use> and
      <use of="starch">starch</use> over the heat to the boil and keep it there for <time>1 to 2 min</time>.</step>)",
    .source = "common practice: the amylase of the yolk must be destroyed",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
