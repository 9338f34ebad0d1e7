#include <algorithm>
#include <array>

#include "core/measure/rough_time.h"
#include "core/rules/figure_text.h"
#include "core/rules/gate_steps.h"
#include "core/rules/heat_passage.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

constexpr std::array depths_cm{10.0, 8.0, 6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.0};

std::string depth_text(double metres) { return figure_text(metres * 1000, measure::Kind::length); }

/// A piece that is heated through, and not food that thaws.
bool heats(const HeatPassage& passage) { return passage.to > std::max(passage.from, 25.0); }

/// The deepest it can lie and still come there in the time; empty where none of those will do.
std::string thinner(const HeatPassage& passage) {
  for (const double cm : depths_cm) {
    if (cm / 100 > 0.8 * passage.depth) continue;
    const HeatPassage other = passage.at_depth(cm / 100);
    const double seconds = likely(other);
    if (!(seconds > 0 && seconds <= passage.seconds)) continue;
    return (heats(passage) ? "cut it " + depth_text(other.depth) + " thick: about "
                           : "lay it " + depth_text(other.depth) + " deep: about ") +
           measure::rough_time(seconds);
  }
  return {};
}

std::string way_out(const HeatPassage& passage, const std::string& usual) {
  if (passage.stands) return "take it out " + usual + " ahead, or make it in smaller portions";
  const std::string longer = "give it " + usual;
  const std::string lay = thinner(passage);
  if (!lay.empty()) return lay + ", or " + longer;
  if (passage.to < passage.from) return longer + ", or cool it in ice or a blast chiller";
  return longer + (!heats(passage) ? ", or lay it thinner"
                   : passage.ice() ? ", or thaw it first"
                                   : ", or cut it thinner");
}

void look_at(Check& check, const HeatPassage& passage) {
  const double least = quickest(passage);
  if (least <= passage.spare * passage.seconds) return;
  const double usual = std::max(likely(passage), least);
  const bool sure = likely(passage) > 0 && usual <= 1.15 * least;
  check.say(passage.where,
            "in " + measure::rough_time(passage.seconds) + " it comes from " + degrees(passage.from) + " to " +
                degrees(reached(passage)) + " at best, not to " + degrees(passage.asked) + ": " +
                depth_text(passage.depth) + (heats(passage) ? " thick " : " deep ") + passage.in + " it takes " +
                measure::rough_time(least) +
                (sure                   ? ""
                 : usual > 1.15 * least ? " at the least, " + measure::rough_time(usual) + " as a rule"
                                        : " at the least"),
            way_out(passage, measure::rough_time(usual)));
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    for (const HeatPassage& passage : heat_passages(check, step)) look_at(check, passage);
  }
}

}  // namespace

/// A time in which heat cannot get through so deep a food.
const Rule too_deep_for_its_time = {
    .id = "too-deep-for-its-time",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "food that lies too deep to cool, freeze, thaw or heat through in the time that is stated",
    .explanation = R"(A cream poured 5 cm deep is still warm in the middle when the clock says half an hour, however cold the
fridge: twice as deep takes up to four times as long. The mousse that is built on it melts.

What the step says of depth, time, place and the temperature to come to is held against the heat that can pass: conduction in
a slab that gives heat away on both faces (what is set, thick or in pieces), one temperature all through (what is stirred, or
thin enough to mix itself), on a grid with ice where it freezes or thaws. So are a frozen dessert that waits in the fridge or
in the room, by what the step or the next one asks of it, and a solid piece that is reheated, poached or steamed in water, steam
or an oven; a crumb, which steam heats, is let be, and so are pan, grill and microwave. Only what even the quickest
medium, the nearest start and a sixth more time would not do is said; of what warms, twice the time, for it may be a roll and
no slab, and dew warms what is frozen. The kitchen file may state its own fridges and how well they cool. Silent where one of
these is not known.)",
    .bad = R"(    <ingredient id="milk" food="milk-whole" at="85 °C">1 l</ingredient>
    <ingredient id="starch" food="starch-maize">80 g</ingredient>
    <step do="mix" makes="cream" hands="2 min">Whisk the <use of="starch">starch</use> into the <use of="milk">milk</use>.</step>
    <step do="chill" on="fridge" unattended="30 min">Pour the <use of="cream">cream</use> <length>5 cm</length> deep and chill
      to <food-temp place="core">10 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="milk" food="milk-whole" at="85 °C">1 l</ingredient>
    <ingredient id="starch" food="starch-maize">80 g</ingredient>
    <step do="mix" makes="cream" hands="2 min">Whisk the <use of="starch">starch</use> into the <use of="milk">milk</use>.</step>
    <step do="chill" on="ice" unattended="1 h">Pour the <use of="cream">cream</use> <length>2 cm</length> deep and chill
      to <food-temp place="core">10 °C</food-temp>.</step>)",
    .source =
        "Carslaw and Jaeger, Conduction of Heat in Solids (1959); properties by Choi and Okos (1986); "
        "coefficients as tamis predict",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
