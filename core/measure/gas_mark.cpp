// Gas marks. British cookers number their flame; the marks' nominal °F are common practice, as the tables on cookers
// and in kitchens print them (225, 250, 275 ... 475 °F). °C tables round these to tens and differ among themselves,
// so °C is worked out from °F here.

#include "core/measure/kitchen_tools.h"

namespace tamis::measure {
namespace {

using base::Ratio;

const Ratio marks[] = {Ratio(1, 4), Ratio(1, 2), 1, 2, 3, 4, 5, 6, 7, 8, 9};

}  // namespace

std::span<const Ratio> gas_marks() { return marks; }

Ratio gas_mark_celsius(Ratio mark) {
  constexpr int lowest_f = 225;
  constexpr int step_f = 25;
  int fahrenheit = lowest_f;
  for (const Ratio known : marks) {
    if (known == mark) return (Ratio(fahrenheit) - 32) * Ratio(5, 9);
    fahrenheit += step_f;
  }
  return Ratio::overflow();
}

Ratio nearest_gas_mark(Ratio celsius) {
  Ratio best = marks[0];
  for (const Ratio mark : marks) {
    if (base::abs(gas_mark_celsius(mark) - celsius) < base::abs(gas_mark_celsius(best) - celsius)) best = mark;
  }
  return best;
}

}  // namespace tamis::measure
