#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/soaking.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::At;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool is_soaked_somewhere(const Check& check, const fiche::Ingredient& line) {
  const fiche::Document& document = check.document;
  if (says_soaked(base::lower(document.all_text(line.node))) || says_soaked(base::lower(document.get(line.node, At::prep))))
    return true;
  if (says_soaked(base::lower(line.name))) return true;
  for (fiche::Node n = document.first_child(line.component); n != fiche::none; n = document.next(n)) {
    if (document.el(n) == fiche::El::note && says_soaked(base::lower(document.all_text(n)))) return true;
  }
  return std::any_of(check.fiche.steps.begin(), check.fiche.steps.end(), [&](const fiche::Step& step) {
    if (step.component != line.component) return false;
    const bool by_word = std::any_of(step.actions.begin(), step.actions.end(), [](std::string_view word) {
      return word == "soak" || word == "bloom" || word == "soften";
    });
    return by_word || says_soaked(base::lower(document.all_text(step.node)));
  });
}

/// Powder that is stirred into something cold soaks there.
bool soaks_where_it_goes(const Check& check, const flow::Use& use) {
  return std::any_of(check.flow.steps[at(use.step)].takes.begin(), check.flow.steps[at(use.step)].takes.end(), [&](int u) {
    const flow::Use& other = check.flow.uses[at(u)];
    if (other.thing == use.thing) return false;
    const flow::State& state = check.states().uses[at(u)];
    return state.share(flow::Constituent::water).low > 0.3 && state.celsius.low < figures::gelatine_melts.low;
  });
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::gelatine) == 0) return;
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    if (thing.kind != flow::Thing::Kind::ingredient || (food_kinds(check).things[i] & kind::gelatine) == 0) continue;
    const fiche::Ingredient& line = check.fiche.ingredients[at(thing.ingredient)];
    const auto first =
        std::find_if(thing.uses.begin(), thing.uses.end(), [&](int u) { return is_told(check.flow.uses[at(u)]); });
    if (first == thing.uses.end() || is_soaked_somewhere(check, line)) continue;
    const flow::Use& use = check.flow.uses[at(*first)];
    if (soaks_where_it_goes(check, use)) continue;
    check.say(span_of(check, use), "the gelatine goes in dry: nothing soaks it first",
              "soak leaves in plenty of cold water for 10 min and wring them out; powder in five to six times its weight of "
              "it, all of which goes in");
  }
}

}  // namespace

/// Gelatine put dry into a hot liquid.
const Rule gelatine_not_soaked = {
    .id = "gelatine-not-soaked",
    .severity = base::Severity::warning,
    .topic = "order",
    .summary = "leaf or powdered gelatine that goes in without having been soaked",
    .explanation = R"(Dry gelatine that meets something hot swells outside and stays dry within: it clots, and the
clots sink. Leaves soak in cold water and are wrung out, powder takes five to six times its weight of water, which
belongs to the recipe. Gelatine mass is soaked already.

Silent where the ingredient, or any step of its component, speaks of soaking, and where it goes into something cold in
which it can soak.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf">8 g</ingredient>
    <step do="heat" on="hob" makes="hot-milk">Heat the <use of="milk">milk</use> to <food-temp>80 °C</food-temp>.</step>
    <step do="dissolve">Stir the <use of="leaf">gelatine</use> into the <use of="hot-milk">milk</use>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <ingredient id="leaf" food="gelatine-leaf" prep="soaked, wrung out">8 g</ingredient>
    <step do="heat" on="hob" makes="hot-milk">Heat the <use of="milk">milk</use> to <food-temp>80 °C</food-temp>.</step>
    <step do="dissolve">Stir the <use of="leaf">gelatine</use> into the <use of="hot-milk">milk</use>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
