#include "core/measure/rounded.h"

namespace tamis::measure {
namespace {

using base::Ratio;

Ratio moved(Ratio value, Ratio step, Toward toward) {
  if (toward == Toward::nearest) return base::round_to(value, step);
  const Ratio steps = value / step;
  const bool up = toward == Toward::up && !steps.whole();
  return Ratio(steps.floor() + (up ? 1 : 0)) * step;
}

/// As near as 200 °C and 400 °F lie, which every table prints beside each other (common practice).
const Ratio near_f = 8;
const Ratio near_c = Ratio(9, 2);

/// A round figure where one is near, else the dial's own step.
Ratio dial(Ratio value, Ratio round, Ratio near, Ratio step) {
  const Ratio coarse = base::round_to(value, round);
  return base::abs(coarse - value) <= near ? coarse : base::round_to(value, step);
}

const Unit& unit_of(Scale scale) { return *unit_by_id(scale == Scale::celsius ? "degc" : "degf"); }

/// Degrees have no share: their zero is where someone put it.
Rounded made(Ratio shown, Scale scale, Ratio celsius) {
  Rounded result;
  result.amount = amount_of(shown, unit_of(scale));
  result.exact = celsius;
  result.error = result.amount.low_base() - celsius;
  return result;
}

Ratio on_scale(Ratio celsius, Scale scale) {
  return scale == Scale::celsius ? celsius : convert(celsius, unit_of(Scale::celsius), unit_of(scale));
}

}  // namespace

Rounded round_oven(Ratio celsius, Scale scale, const KitchenTools& tools) {
  const Ratio exact = on_scale(celsius, scale);
  const bool fahrenheit = scale == Scale::fahrenheit;
  const Ratio five = 5;
  if (fahrenheit) {
    const Ratio fine = tools.oven_step_f < five ? tools.oven_step_f : five;
    return made(dial(exact, tools.oven_step_f, near_f, fine), scale, celsius);
  }
  const Ratio round = tools.oven_step_c < 10 ? Ratio(10) : tools.oven_step_c;
  return made(dial(exact, round, near_c, tools.oven_step_c), scale, celsius);
}

Rounded round_food_temperature(Ratio celsius, Scale scale, const KitchenTools& tools, Toward toward) {
  const Ratio fahrenheit_step = tools.thermometer_step_c <= 1 ? Ratio(1) : base::round_to(tools.thermometer_step_c * Ratio(9, 5), 1);
  const Ratio step = scale == Scale::celsius ? tools.thermometer_step_c : fahrenheit_step;
  return made(moved(on_scale(celsius, scale), step, toward), scale, celsius);
}

}  // namespace tamis::measure
