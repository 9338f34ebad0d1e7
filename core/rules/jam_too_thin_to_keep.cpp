#include <cmath>

#include "core/base/utf8.h"
#include "core/rules/contents.h"
#include "core/rules/figure_value.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

constexpr double margin = 5;  // points: fruit differs, and scales do

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// The mass that a component's yield states, else the fiche's where it has no other component; null when none does.
const fiche::Statement* stated_yield(const Check& check, Node component) {
  for (const Node of : {component, check.document.root()}) {
    if (of != component && check.fiche.components.size() != 1) return nullptr;
    const Node yield = check.document.child(of, El::yield);
    const fiche::Statement* mass = yield == fiche::none ? nullptr : check.fiche.statement(yield, At::mass);
    if (mass != nullptr && mass->amount && mass->amount->kind == measure::Kind::mass && mass->amount->has_figure()) return mass;
  }
  return nullptr;
}

/// It is to keep on a shelf: nothing says cold.
bool is_kept_on_a_shelf(const Check& check, Node component) {
  for (const Node of : {component, check.document.root()}) {
    const Node keep = check.document.child(of, El::keep);
    if (keep == fiche::none) continue;
    return !base::says(check.document.get(keep, At::where),
                       {"fridge", "freez", "cold", "chill", "frigo", "froid", "congél", "kühl", "tiefkühl", "never"});
  }
  return false;
}

/// The most of it that can be dissolved sugar, in g: of all that goes in. Empty where a food or an amount is not known.
std::optional<double> most_sugar(const Contents& contents) {
  double sum = 0;
  for (const Part& part : contents.parts) {
    if (part.food == nullptr || !part.grams) return std::nullopt;
    const double carbohydrate = part.food->per_100_g.carbohydrate, fibre = part.food->per_100_g.fibre;
    if (std::isnan(carbohydrate)) return std::nullopt;
    sum += part.grams->high * (carbohydrate - (std::isnan(fibre) ? 0 : fibre)) / 100;
  }
  return sum;
}

void look_at(Check& check, Node component, int last) {
  const fiche::Statement* yield = stated_yield(check, component);
  if (yield == nullptr || !is_kept_on_a_shelf(check, component)) return;
  const Contents contents = contents_of(check, last);
  if (!contents.whole || !contents.has(food::Role::fruit) || !contents.has(food::Role::sugar)) return;
  const auto sugar = most_sugar(contents);
  const double mass = lowest_of(*yield->amount);
  if (!sugar || !(mass > 0)) return;
  const double share = 100 * *sugar / mass;
  if (share >= figures::jam_solids.low - margin) return;
  check.say(yield->where,
            "at most " + std::to_string(std::lround(share)) + " % of this jam is sugar by what goes in; from " +
                std::to_string(std::lround(figures::jam_solids.low)) + " % on it keeps on a shelf",
            "boil it down further, take more sugar, or keep it in the fridge and say for how long");
}

void run(Check& check) {
  for (const Node component : check.fiche.components) {
    const std::string title = base::lower(check.document.get(component, At::title));
    if (!has_phrase(title, "jam|marmalade|marmelade|konfitüre|confiture|mermelada")) continue;
    int last = -1;
    for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
      if (check.flow.steps[at(step)].component == component) last = step;
    }
    if (last >= 0) look_at(check, component, last);
  }
}

}  // namespace

/// Jam with too little sugar for its yield to keep on a shelf.
const Rule jam_too_thin_to_keep = {
    .id = "jam-too-thin-to-keep",
    .severity = base::Severity::advice,
    .topic = "balance",
    .summary = "jam that has too little sugar in its yield to keep on a shelf",
    .explanation = R"(Above about 60 % of dissolved solids nothing grows in a jam but mould on its surface; below, it has to be
kept cold, or be processed by a tested recipe. What goes in of sugar, the fruit's own with it, held against the weight
that comes out, says how far it was boiled down.

Held against is a component called jam or marmalade whose yield is stated as a mass and which is kept neither in the fridge
nor in the freezer, with a margin of 5 points. Where a food or an amount is not known nothing is said. Keeping rests on acid
and on clean jars too: a tested recipe and local rules decide.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-jam" lang="en" units="metric">
  <title>Plum jam</title>
  <component id="jam" title="Plum jam">
    <yield mass="1.2 kg"><loss what="cooking" amount="300 g"/></yield>
    <ingredient id="plums" food="plum">1 kg</ingredient>
    <ingredient id="sugar" food="sugar-white">500 g</ingredient>
    <step do="boil">Boil the <use of="plums">plums</use> and <use of="sugar">sugar</use> <until>until a drop sets</until>.</step>
    <keep where="dry store" for="1 year"/>
  </component>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-jam" lang="en" units="metric">
  <title>Plum jam</title>
  <component id="jam" title="Plum jam">
    <yield mass="1.5 kg"><loss what="cooking" amount="400 g"/></yield>
    <ingredient id="plums" food="plum">1 kg</ingredient>
    <ingredient id="sugar" food="sugar-white">900 g</ingredient>
    <step do="boil">Boil the <use of="plums">plums</use> and <use of="sugar">sugar</use> <until>until a drop sets</until>.</step>
    <keep where="dry store" for="1 year"/>
  </component>
</fiche>)",
    .source = "Directive 2001/113/EC, Annex I: jam has 60 % soluble dry matter or more, from memory",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
