#include "core/measure/kitchen_tools.h"

#include <cmath>
#include <string>

#include "core/measure/rounded.h"

namespace tamis::measure {
namespace {

using base::Ratio;

Quantity quantity(Ratio value, std::string_view unit) { return {value, unit_by_id(unit)}; }

}  // namespace

KitchenTools::KitchenTools() {
  scales = {{Ratio(1, 10), 500}, {1, 15000}};
  for (const std::string system : {"us", "metric", "imperial"}) {
    for (const Ratio part : {Ratio(1, 8), Ratio(1, 4), Ratio(1, 2), Ratio(1)}) {
      spoons.push_back(quantity(part, "tsp-" + system));
    }
    spoons.push_back(quantity(1, "tbsp-" + system));
    for (const Ratio part : {Ratio(1, 4), Ratio(1, 3), Ratio(1, 2), Ratio(1)}) {
      cups.push_back(quantity(part, "cup-" + system));
    }
  }
}

double share_of_error(Ratio shown, Ratio exact) {
  if (exact == 0) return 0;
  return std::abs(shown.approximate() - exact.approximate()) / std::abs(exact.approximate());
}

Rounded rounded(Amount shown, Ratio exact, Tolerance tolerance) {
  Rounded made;
  made.amount = std::move(shown);
  made.exact = exact;
  made.error = made.amount.low_base() - exact;
  made.share = share_of_error(made.amount.low_base(), exact);
  made.within = base::abs(made.error) <= base::abs(exact) * tolerance.share;
  return made;
}

}  // namespace tamis::measure
