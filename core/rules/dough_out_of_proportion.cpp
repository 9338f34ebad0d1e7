#include <algorithm>
#include <cmath>

#include "core/rules/contents.h"
#include "core/rules/figure_text.h"
#include "core/rules/heated.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using food::Role;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

flow::Range percent_of(const flow::Grams& part, const flow::Grams& flour) {
  return {100 * part.low / flour.high, 100 * part.high / flour.low};
}

struct Dough {
  flow::Grams flour;
  Contents contents;
  fiche::Node component;
};

fiche::Node line_with(const Check& check, const Dough& dough, Role role) {
  for (const Part& part : dough.contents.parts) {
    if (part.food != nullptr && part.food->role == role) return check.flow.things[at(part.thing)].node;
  }
  return dough.component;
}

/// Fresh yeast that raises as much (common practice: 100 of fresh, 40 of active dry, 33 of instant).
double as_fresh(std::string_view id) {
  return id == "yeast-fresh" ? 1 : id == "yeast-active-dry" ? 2.5 : id == "yeast-instant" ? 3 : 0;
}

void say(Check& check, const Dough& dough, Role role, const std::string& what, double percent, const std::string& usual) {
  const fiche::Node line = line_with(check, dough, role);
  check.say(check.document.head_span(line), what + " is " + percent_text(percent, percent) + " of the flour's weight; " + usual,
            "look at the figure and at the flour's");
}

void look_at_dry(Check& check, const Dough& dough, Role role, const TradeFigure& figure, const std::string& usual) {
  const auto grams = dough.contents.grams_of(role);
  if (!grams) return;
  if (const double least = percent_of(*grams, dough.flour).low; least > figure.high)
    say(check, dough, role, std::string(food::role_name(role)), least, usual);
}

void look_at_yeast(Check& check, const Dough& dough) {
  flow::Grams fresh;
  for (const Part& part : dough.contents.parts) {
    if (part.food == nullptr || part.food->role != Role::yeast) continue;
    const double times = as_fresh(general_id(check, part.food));
    if (!part.grams || times == 0) return;
    fresh.low += times * part.grams->low;
    fresh.high += times * part.grams->high;
  }
  if (const double least = percent_of(fresh, dough.flour).low; least > figures::dough_yeast.high)
    say(check, dough, Role::yeast, "yeast, as fresh,", least, "dough takes 1 to 4 %, a rich one up to 8 %");
}

/// All water in it, that of milk and eggs too; flour's own is not counted, as bakers do, nor fruit's and what soaks.
void look_at_water(Check& check, const Dough& dough) {
  if (dough.contents.has(Role::vegetable) || dough.contents.has(Role::fruit) || dough.contents.has(Role::other)) return;
  flow::Grams water;
  int line = -1;
  double most = 0;
  for (const Part& part : dough.contents.parts) {
    const double share = part.food == nullptr || !part.grams ? NAN : part.food->per_100_g.water / 100;
    if (std::isnan(share)) return;
    if (part.food->role == Role::flour) continue;
    water.low += share * part.grams->low;
    water.high += share * part.grams->high;
    if (share * part.grams->high > most) line = part.thing;
    most = std::max(most, share * part.grams->high);
  }
  const flow::Range hydration = percent_of(water, dough.flour);
  const bool wet = hydration.low > figures::dough_water.high;
  if (line < 0 || (!wet && hydration.high >= figures::dough_water.low)) return;
  check.say(check.document.head_span(check.flow.things[at(line)].node),
            "all water in the dough is " + percent_text(hydration.low, hydration.high) + " of the flour's weight; " +
                (wet ? "the wettest that is kneaded takes 100 %" : "the stiffest that is kneaded takes 40 %"),
            "look at the figure and at the flour's");
}

void look_at(Check& check, int step) {
  Dough dough{{}, contents_of(check, step), check.flow.steps[at(step)].component};
  if (!dough.contents.whole || !dough.contents.has(Role::yeast)) return;
  const auto flour = dough.contents.grams_of(Role::flour);
  if (!flour || !(flour->low > 0)) return;
  dough.flour = *flour;
  look_at_dry(check, dough, Role::salt, figures::dough_salt, "bread takes 1.8 to 2.2 %");
  look_at_dry(check, dough, Role::sugar, figures::dough_sugar, "yeast hardly works above 35 %");
  look_at_yeast(check, dough);
  look_at_water(check, dough);
}

void run(Check& check) {
  if (!lists(check, Role::yeast)) return;
  // The last step that kneads has all of the dough in it.
  std::vector<std::pair<fiche::Node, int>> kneads;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    if (!does(check, step, {"knead"})) continue;
    const fiche::Node component = check.flow.steps[at(step)].component;
    if (!kneads.empty() && kneads.back().first == component)
      kneads.back().second = step;
    else
      kneads.emplace_back(component, step);
  }
  for (const auto& [component, step] : kneads) look_at(check, step);
}

}  // namespace

/// Salt, yeast, sugar or water of a yeast dough in a proportion to its flour that nobody bakes.
const Rule dough_out_of_proportion = {
    .id = "dough-out-of-proportion",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "salt, yeast, sugar or water of a yeast dough beyond what any dough takes",
    .explanation =
        R"(Bakers weigh by the flour: bread takes about 2 % of salt, 1 to 4 % of fresh yeast, 55 to 85 % of water. A dough
with 20 % of salt has a zero too many in it, and is noticed when a batch has been thrown away.

Held against wide bounds are the dry and fresh yeast (as fresh), salt, sugar, and all water, that of milk and eggs with
it, of what is kneaded and has yeast in it. A dough of which part is kept back, or whose flour, foods or weights are not
all known, is let be; so are batters.)",
    .bad = R"(    <ingredient id="flour" food="flour-wheat-white">1 kg</ingredient>
    <ingredient id="water" food="water">650 g</ingredient>
    <ingredient id="salt" food="salt">200 g</ingredient>
    <ingredient id="yeast" food="yeast-fresh">20 g</ingredient>
    <step do="knead">Knead the <use of="flour">flour</use>, <use of="water">water</use>, <use of="salt">salt</use> and
      <use of="yeast">yeast</use> to a dough.</step>)",
    .good = R"(    <ingredient id="flour" food="flour-wheat-white">1 kg</ingredient>
    <ingredient id="water" food="water">650 g</ingredient>
    <ingredient id="salt" food="salt">20 g</ingredient>
    <ingredient id="yeast" food="yeast-fresh">20 g</ingredient>
    <step do="knead">Knead the <use of="flour">flour</use>, <use of="water">water</use>, <use of="salt">salt</use> and
      <use of="yeast">yeast</use> to a dough.</step>)",
    .source = "baker's percentages, common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
