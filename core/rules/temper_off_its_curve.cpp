#include <algorithm>
#include <vector>

#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

using fiche::El;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hair = 1;   // K
constexpr double chart = 2;  // K by which charts and packs differ on melting and cooling
constexpr double packs = 5;  // K that packs let it be melted hotter
constexpr double least_melted = 40;
constexpr double melted = 36;  // °C: what is hotter is melted out

struct Curve {
  std::string_view name;
  const TradeFigure &melts, &cools, &works;
  double melts_most;
};

const Curve* curve_of(unsigned kinds) {
  static const Curve dark{"dark chocolate", figures::dark_chocolate_melts, figures::dark_chocolate_cools, figures::dark_chocolate_works, 55};
  static const Curve milk{"milk chocolate", figures::milk_chocolate_melts, figures::milk_chocolate_cools, figures::milk_chocolate_works, 50};
  static const Curve white{"white chocolate", figures::white_chocolate_melts, figures::white_chocolate_cools,
                           figures::white_chocolate_works, 50};
  switch (kinds & (kind::dark | kind::milk_chocolate | kind::white_chocolate)) {
    case kind::dark: return &dark;
    case kind::milk_chocolate: return &milk;
    case kind::white_chocolate: return &white;
    default: return nullptr;
  }
}

std::string whole(const Curve& curve) {
  return "the curve of " + std::string(curve.name) + ": melted at " + text_of(curve.melts) + ", cooled to " +
         text_of(curve.cools) + ", worked at " + text_of(curve.works) + "; the pack's own comes first";
}

bool say(Check& check, const StatedHeat& heat, const Curve& curve, std::string_view is, const TradeFigure& usual,
         std::string_view or_else) {
  check.say(heat.statement->where,
            std::string(curve.name) + " is " + std::string(is) + " " + text_of(usual) + ", and this says " + said(heat) + ": " +
                std::string(or_else),
            whole(curve));
  return true;
}

bool off_in_melting(Check& check, const StatedHeat& heat, const Curve& curve) {
  if (*heat.low > curve.melts_most + packs)
    return say(check, heat, curve, "melted out at", curve.melts, "it scorches and thickens");
  return *heat.high < least_melted - hair && say(check, heat, curve, "melted out at", curve.melts, "old crystals stay in it");
}

bool off_in_cooling(Check& check, const StatedHeat& heat, const Curve& curve) {
  if (*heat.high < curve.cools.low - chart) return say(check, heat, curve, "cooled to", curve.cools, "it thickens too far");
  return *heat.low > curve.cools.high + chart && say(check, heat, curve, "cooled to", curve.cools, "no crystals form");
}

bool off_in_working(Check& check, const StatedHeat& heat, const Curve& curve) {
  if (*heat.low > curve.works.high + hair)
    return say(check, heat, curve, "worked at", curve.works, "the crystals melt again, and it sets dull");
  return *heat.high < curve.works.low - hair &&
         say(check, heat, curve, "worked at", curve.works, "it is thick, and sets with marks");
}

/// Melted, cooled, warmed again; or melted and seeded down to where it is worked. The first figure off its curve is said.
void judge(Check& check, const std::vector<const StatedHeat*>& heats, const Curve& curve) {
  std::size_t next = 0;
  if ((*heats[0]->high > melted || heats.size() >= 3) && off_in_melting(check, *heats[next++], curve)) return;
  const std::size_t left = heats.size() - next;
  const StatedHeat& last = *heats.back();
  if (left >= 2) {
    if (!off_in_cooling(check, *heats[next], curve)) off_in_working(check, last, curve);
  } else if (left == 1) {
    const bool cooled = *last.high <= curve.cools.high + hair && *last.low >= curve.cools.low - chart;
    if (!cooled) off_in_working(check, last, curve);
  }
}

void look_at(Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  if ((kinds & kind::chocolate) == 0 || (kinds & ~kind::chocolate) != 0) return;
  const Curve* curve = curve_of(kinds);
  const auto& said = stated_heats(check, check.flow.steps[at(step)].node);
  if (curve == nullptr || said.empty() || !does(check, step, {"temper"})) return;
  std::vector<const StatedHeat*> heats;
  for (const StatedHeat& heat : said) {
    if (heat.el == El::food_temp && heat.low && heat.high) heats.push_back(&heat);
  }
  if (!heats.empty()) judge(check, heats, *curve);
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::chocolate) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Milk chocolate tempered for work at 34 °C.
const Rule temper_off_its_curve = {
    .id = "temper-off-its-curve",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "chocolate melted, cooled or worked off the tempering curve of its kind",
    .explanation = R"(Tempered chocolate is melted out, cooled until the right crystals form, and warmed to where only
those stay: dark about 50, 28, 31 to 32 °C; milk about 45, 27, 29 to 30; white about 40 to 45, 25 to 27, 28 to 29.
Seeded with tempered chocolate it goes down to the working figure at once. Charts differ by 2 K, and the pack's curve
comes first: with its figures in the recipe this rule can be switched off.

Read are the temperatures of one step that tempers chocolate of one kind and nothing else, in their order.)",
    .bad = R"(    <ingredient id="chocolate" food="chocolate-milk">500 g</ingredient>
    <step do="temper">Melt the <use of="chocolate">chocolate</use> to <food-temp>45 °C</food-temp>, cool to
      <food-temp>27 °C</food-temp> and warm to <food-temp>34 °C</food-temp>.</step>)",
    .good = R"(    <ingredient id="chocolate" food="chocolate-milk">500 g</ingredient>
    <step do="temper">Melt the <use of="chocolate">chocolate</use> to <food-temp>45 °C</food-temp>, cool to
      <food-temp>27 °C</food-temp> and warm to <food-temp>29–30 °C</food-temp>.</step>)",
    .source =
        "H. McGee, On Food and Cooking: melting and cooling; pastry teaching text: working; dark 31 to 32 °C: common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
