#include "core/rules/figure_value.h"

namespace tamis::rules {

double value_of(const std::vector<measure::Quantity>& figure) {
  double out = 0;
  for (const measure::Quantity& part : figure) {
    out += part.value.approximate() * part.unit->to_base.approximate() + part.unit->offset.approximate();
  }
  return out;
}

double lowest_of(const measure::Amount& amount) { return value_of(amount.low.empty() ? amount.high : amount.low); }
double highest_of(const measure::Amount& amount) { return value_of(amount.high.empty() ? amount.low : amount.high); }

}  // namespace tamis::rules
