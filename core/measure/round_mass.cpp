// Masses: the figure a cook reads off the scales and writes down. Steps by size are common practice; ounces in
// quarters as the round-off table of the US armed forces recipe cards has them (A.1).

#include <string>

#include "core/measure/rounded.h"
#include "core/measure/write.h"

namespace tamis::measure {
namespace {

using base::Ratio;

struct Step {
  Ratio from;  ///< grams or ounces
  Ratio step;
};

Ratio step_for(Ratio value, std::span<const Step> steps) {
  Ratio found = steps.front().step;
  for (const Step& step : steps) {
    if (value >= step.from) found = step.step;
  }
  return found;
}

const KitchenTools::Scales* scales_for(Ratio grams, const KitchenTools& tools) {
  for (const auto& scales : tools.scales) {
    if (grams <= scales.most_g) return &scales;
  }
  return tools.scales.empty() ? nullptr : &tools.scales.back();
}

Ratio reads(Ratio grams, const KitchenTools& tools) {
  const KitchenTools::Scales* scales = scales_for(grams, tools);
  return scales != nullptr && scales->reads_g > 0 ? scales->reads_g : Ratio(1);
}

/// The larger of what is usual and what the scales read, as a multiple of the latter.
Ratio readable(Ratio usual, Ratio reading) {
  if (usual <= reading) return reading;
  return (usual / reading).whole() ? usual : reading;
}

Amount grams_or_kilograms(Ratio grams) {
  if (grams >= 1000) return amount_of(grams / 1000, *unit_by_id("kg"));
  return amount_of(grams, *unit_by_id("g"));
}

Amount pounds_and_ounces(Ratio ounces) {
  const Unit& oz = *unit_by_id("oz");
  const Ratio pounds = (ounces / 16).floor();
  if (pounds == 0) return amount_of(ounces, oz);
  Amount amount = amount_of(pounds, *unit_by_id("lb"));
  const Ratio left = ounces - pounds * 16;
  if (left > 0) amount.low.push_back({left, &oz});
  return amount;
}

/// "weigh 0.34 g on scales that read 0.01 g"
std::string finer_scales(Ratio grams, Tolerance tolerance) {
  Writing plain;
  plain.fractions = false;
  for (const Ratio reading : {Ratio(1, 10), Ratio(1, 100), Ratio(1, 1000)}) {
    if (reading / 2 <= grams * tolerance.share) {
      return "weigh " + write_number(base::round_to(grams, reading), plain) + " g on scales that read " +
             write_number(reading, plain) + " g";
    }
  }
  return "make a larger batch: " + write_number(grams, plain) + " g is too little to weigh exactly enough";
}

Rounded metric(Ratio grams, const KitchenTools& tools, Tolerance tolerance) {
  static const Step steps[] = {{0, Ratio(1, 10)}, {10, 1}, {1000, 5}, {5000, 10}, {20000, 50}};
  const Ratio reading = reads(grams, tools);
  const Ratio step = readable(step_for(grams, steps), reading);
  Rounded made = rounded(grams_or_kilograms(base::round_to(grams, step)), grams, tolerance);
  if (!made.within) made = rounded(grams_or_kilograms(base::round_to(grams, reading)), grams, tolerance);
  return made;
}

/// Quarters of an ounce, then tenths and hundredths where the scales are fine enough for them.
Rounded avoirdupois(Ratio grams, const KitchenTools& tools, Tolerance tolerance) {
  static const Step steps[] = {{0, Ratio(1, 8)}, {1, Ratio(1, 4)}, {32, Ratio(1, 2)}, {160, 1}};
  const Ratio ounce = unit_by_id("oz")->to_base;
  const Ratio ounces = grams / ounce;
  Rounded made = rounded(pounds_and_ounces(base::round_to(ounces, step_for(ounces, steps))), grams, tolerance);
  for (const Ratio finer : {Ratio(1, 8), Ratio(1, 10), Ratio(1, 20), Ratio(1, 100)}) {
    const bool readable = reads(grams, tools) <= finer * ounce;
    if (made.within || !readable) continue;
    Rounded next = rounded(pounds_and_ounces(base::round_to(ounces, finer)), grams, tolerance);
    if (next.share < made.share) made = std::move(next);
  }
  return made;
}

}  // namespace

Rounded round_mass(Ratio grams, System system, const KitchenTools& tools, Tolerance tolerance) {
  const bool ounces = system == System::us || system == System::imperial;
  Rounded made = ounces ? avoirdupois(grams, tools, tolerance) : metric(grams, tools, tolerance);
  if (!made.within) made.better = finer_scales(grams, tolerance);
  return made;
}

}  // namespace tamis::measure
