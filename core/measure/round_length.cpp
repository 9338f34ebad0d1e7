// Lengths as they are read off a rule, or as moulds are sold (common practice).

#include "core/measure/rounded.h"

namespace tamis::measure {
namespace {

using base::Ratio;

/// A tin or a dice is seldom truer than this, and no knife truer than a millimetre.
const Tolerance usual{Ratio(5, 100)};
constexpr int knife_mm = 1;

Ratio not_zero(Ratio value, Ratio step) { return value == 0 ? step : value; }

Rounded metric(Ratio millimetres, Ratio rule_step) {
  const Ratio usual_step = millimetres < 5 ? Ratio(1, 2) : millimetres < 20 ? Ratio(1) : millimetres < 100 ? 5 : 10;
  const Ratio step = usual_step < rule_step && millimetres >= 5 ? rule_step : usual_step;
  const Ratio shown = not_zero(base::round_to(millimetres, step), step);
  const bool small = shown < 10;
  return rounded(small ? amount_of(shown, *unit_by_id("mm")) : amount_of(shown / 10, *unit_by_id("cm")), millimetres,
                 usual);
}

Rounded inches(Ratio millimetres) {
  const Unit& inch = *unit_by_id("in");
  const Ratio exact = millimetres / inch.to_base;
  const Ratio whole = exact.nearest();
  const bool near_whole = base::abs(whole - exact) <= exact * Ratio(2, 100);
  const Ratio step = exact < Ratio(1, 16) ? Ratio(1, 16) : exact < 2 ? Ratio(1, 8) : Ratio(1, 4);
  const Ratio shown = near_whole && whole > 0 ? whole : not_zero(base::round_to(exact, step), Ratio(1, 16));
  return rounded(amount_of(shown, inch), millimetres, usual);
}

}  // namespace

Rounded round_length(Ratio millimetres, System system, const KitchenTools& tools) {
  const bool in_inches = system == System::us || system == System::imperial;
  Rounded made = in_inches ? inches(millimetres) : metric(millimetres, tools.length_step_mm);
  made.within = made.within || base::abs(made.error) <= knife_mm;
  if (!made.within) made.better = "measure in millimetres";
  return made;
}

}  // namespace tamis::measure
