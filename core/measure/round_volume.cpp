// Volumes. Millilitres are rounded to what spoons and jugs show; spoons and cups are combined as a cook would count
// them: the fewest parts that come near enough, "1 cup 2 tbsp", "1 qt 1 1/2 cups".

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "core/measure/rounded.h"
#include "core/measure/write.h"

namespace tamis::measure {
namespace {

using base::Ratio;

// ---- millilitres and litres

/// A syringe shows tenths, a set of spoons quarter teaspoons, a small measure 5 ml, a jug 10 ml from 100 ml up
/// (common practice).
Ratio jug_step(Ratio millilitres) {
  struct Step {
    Ratio from, step;
  };
  static const Step steps[] = {{0, Ratio(1, 10)}, {1, Ratio(1, 4)}, {3, Ratio(1, 2)}, {15, 1},
                               {20, 5},           {100, 10},        {2000, 50},       {10000, 100}};
  Ratio found = steps[0].step;
  for (const Step& step : steps) {
    if (millilitres >= step.from) found = step.step;
  }
  return found;
}

Amount millilitres_or_litres(Ratio millilitres) {
  if (millilitres >= 1000) return amount_of(millilitres / 1000, *unit_by_id("l"));
  return amount_of(millilitres, *unit_by_id("ml"));
}

Rounded metric(Ratio millilitres, Tolerance tolerance) {
  const Ratio step = jug_step(millilitres);
  Rounded made = rounded(millilitres_or_litres(base::round_to(millilitres, step)), millilitres, tolerance);
  // The next finer jug or measure shows half or a fifth of it.
  for (const Ratio finer : {step / 2, step / 5}) {
    if (made.within || finer < Ratio(1, 10)) continue;
    made = rounded(millilitres_or_litres(base::round_to(millilitres, finer)), millilitres, tolerance);
  }
  return made;
}

// ---- spoons, cups, pints

/// A measure that can be filled: whole ones, and these parts of one.
struct Vessel {
  const Unit* unit;
  std::vector<Ratio> parts;  ///< below 1, ascending, 0 first
  Ratio least, most;         ///< how many of it stand alone
};

std::vector<Ratio> multiples_below_one(const std::vector<Ratio>& sizes) {
  std::vector<Ratio> parts = {0};
  for (const Ratio size : sizes) {
    for (Ratio part = size; size > 0 && part < 1 && parts.size() < 32; part = part + size) parts.push_back(part);
  }
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  return parts;
}

/// Sizes of the spoons or cups of a unit, in that unit; the usual ones when the kitchen's are of another system.
std::vector<Ratio> sizes_of(const std::vector<Quantity>& own, const std::vector<Quantity>& usual, const Unit& unit) {
  std::vector<Ratio> sizes;
  for (const auto* set : {&own, &usual}) {
    for (const Quantity& size : *set) {
      if (size.unit == &unit) sizes.push_back(size.value);
    }
    if (!sizes.empty()) break;
  }
  return sizes;
}

/// Above a whole teaspoon nobody adds an eighth.
constexpr int eighths = 8;

/// A measure that can be filled in the parts a set of spoons or cups allows, from its smallest up.
Vessel vessel_of_sizes(const Unit& unit, const std::vector<Ratio>& sizes, Ratio most) {
  std::vector<Ratio> parts = multiples_below_one(sizes);
  const Ratio least = parts.size() > 1 ? parts[1] : Ratio(1);
  return {&unit, std::move(parts), least, most};
}

std::vector<Vessel> us_vessels(const KitchenTools& tools) {
  const KitchenTools usual;
  const Unit& tsp = *unit_by_id("tsp-us");
  const Unit& cup = *unit_by_id("cup-us");
  const std::vector<Ratio> quarters = {0, Ratio(1, 4), Ratio(1, 2), Ratio(3, 4)};
  const std::vector<Ratio> halves = {0, Ratio(1, 2)};
  return {{unit_by_id("gallon-us"), quarters, 1, 1000000},
          {unit_by_id("quart-us"), halves, 1, 4},
          vessel_of_sizes(cup, sizes_of(tools.cups, usual.cups, cup), 8),
          {unit_by_id("tbsp-us"), halves, 1, 7},
          vessel_of_sizes(tsp, sizes_of(tools.spoons, usual.spoons, tsp), 3)};
}

std::vector<Vessel> imperial_vessels(const KitchenTools& tools) {
  const KitchenTools usual;
  const Unit& tsp = *unit_by_id("tsp-imperial");
  const std::vector<Ratio> quarters = {0, Ratio(1, 4), Ratio(1, 2), Ratio(3, 4)};
  const std::vector<Ratio> halves = {0, Ratio(1, 2)};
  return {{unit_by_id("gallon-imperial"), halves, 1, 1000000},
          {unit_by_id("pint-imperial"), quarters, Ratio(1, 2), 16},
          {unit_by_id("floz-imperial"), halves, 2, 30},
          {unit_by_id("tbsp-imperial"), halves, 1, 5},
          vessel_of_sizes(tsp, sizes_of(tools.spoons, usual.spoons, tsp), 3)};
}

Ratio nearest_fill(Ratio count, const Vessel& vessel) {
  const Ratio whole = count.floor();
  Ratio best = whole + 1;
  for (const Ratio part : vessel.parts) {
    if (part.denominator() == eighths && whole > 0) continue;
    if (base::abs(whole + part - count) < base::abs(best - count)) best = whole + part;
  }
  return best;
}

/// The most that can be filled without going over. Gallons, quarts and spoons only whole: something follows them.
Ratio fill_below(Ratio count, const Vessel& vessel) {
  const Ratio whole = count.floor();
  const bool parts = vessel.unit->id.starts_with("cup") || vessel.unit->id.starts_with("pint");
  Ratio best = whole;
  for (const Ratio part : vessel.parts) {
    if (parts && whole + part <= count) best = whole + part;
  }
  return best;
}

/// Whether so many are counted in this measure: 3 tbsp, but no 5 tbsp 1 tsp, which are 1/3 cup.
bool stands_first(Ratio filled, const std::vector<Vessel>& vessels, std::size_t at, std::size_t count) {
  const Vessel& vessel = vessels[at];
  if (count == 1) return filled >= vessel.least && filled <= vessel.most;
  if (at == 0) return true;
  const Vessel& larger = vessels[at - 1];
  return filled * vessel.unit->to_base < larger.least * larger.unit->to_base;
}

/// Fills `count` vessels from the `first` on, whole ones but the last, which is filled to the nearest part.
std::optional<Amount> combined(Ratio millilitres, const std::vector<Vessel>& vessels, std::size_t first,
                               std::size_t count) {
  if (first + count > vessels.size()) return std::nullopt;
  Amount amount;
  amount.kind = Kind::volume;
  Ratio left = millilitres;
  for (std::size_t i = first; i < first + count; ++i) {
    const Vessel& vessel = vessels[i];
    const Ratio in_units = left / vessel.unit->to_base;
    const bool last = i + 1 == first + count;
    const Ratio filled = last ? nearest_fill(in_units, vessel) : fill_below(in_units, vessel);
    if (filled == 0) return std::nullopt;
    // A last part that rounds up to the measure before it belongs to an answer with fewer parts.
    if (i > first && filled * vessel.unit->to_base >= vessels[i - 1].unit->to_base) return std::nullopt;
    if (i == first && !stands_first(filled, vessels, first, count)) return std::nullopt;
    amount.low.push_back({filled, vessel.unit});
    left = left - filled * vessel.unit->to_base;
  }
  return amount;
}

/// Of all ways with so many parts the one nearest to the exact figure; the first of equals.
std::optional<Amount> best_of(Ratio millilitres, const std::vector<Vessel>& vessels, std::size_t count) {
  std::optional<Amount> best;
  for (std::size_t first = 0; first < vessels.size(); ++first) {
    auto made = combined(millilitres, vessels, first, count);
    if (!made) continue;
    const double share = share_of_error(made->low_base(), millilitres);
    if (!best || share < share_of_error(best->low_base(), millilitres)) best = std::move(made);
  }
  return best;
}

/// The fewest parts that use up no more than half of the tolerance; an exact answer goes before a near one.
Rounded household(Ratio millilitres, const std::vector<Vessel>& vessels, Tolerance tolerance) {
  constexpr std::size_t most_parts = 3;
  std::optional<Amount> near;
  std::optional<Amount> best;
  for (std::size_t count = 1; count <= most_parts; ++count) {
    auto made = best_of(millilitres, vessels, count);
    if (!made) continue;
    const Ratio error = base::abs(made->low_base() - millilitres);
    if (error == 0) return rounded(std::move(*made), millilitres, tolerance);
    if (!near && error <= millilitres * tolerance.share / 2) near = made;
    if (!best || error < base::abs(best->low_base() - millilitres)) best = std::move(made);
  }
  if (near) return rounded(std::move(*near), millilitres, tolerance);
  if (best) return rounded(std::move(*best), millilitres, tolerance);
  return rounded(amount_of(vessels.back().least, *vessels.back().unit), millilitres, tolerance);
}

}  // namespace

Rounded round_volume(Ratio millilitres, System system, const KitchenTools& tools, Tolerance tolerance) {
  Rounded made = system == System::us         ? household(millilitres, us_vessels(tools), tolerance)
                 : system == System::imperial ? household(millilitres, imperial_vessels(tools), tolerance)
                                              : metric(millilitres, tolerance);
  if (!made.within) made.better = "weigh it: no spoon or jug comes near enough";
  return made;
}

}  // namespace tamis::measure
