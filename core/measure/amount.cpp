#include "core/measure/amount.h"

#include "core/measure/kitchen_tools.h"

namespace tamis::measure {
namespace {

using base::Ratio;

Ratio sum(const std::vector<Quantity>& parts) {
  Ratio total;
  for (const Quantity& part : parts) total = total + part.in_base();
  return total;
}

/// The mark that has exactly this temperature.
Ratio mark_of(Ratio celsius) {
  for (const Ratio mark : gas_marks()) {
    if (gas_mark_celsius(mark) == celsius) return mark;
  }
  return Ratio::overflow();
}

}  // namespace

Ratio Quantity::in_base() const {
  if (is_gas_mark(*unit)) return gas_mark_celsius(value);
  return value * unit->to_base + unit->offset;
}

Ratio Amount::low_base() const { return sum(form == Form::at_most ? high : low); }

Ratio Amount::high_base() const { return sum(form == Form::range || form == Form::at_most ? high : low); }

Ratio Amount::middle_base() const { return (low_base() + high_base()) / 2; }

Amount amount_of(Ratio value, const Unit& unit) {
  Amount amount;
  amount.kind = unit.kind;
  amount.low.push_back({value, &unit});
  return amount;
}

Ratio convert(Ratio value, const Unit& from, const Unit& to) {
  if (from.kind != to.kind) return Ratio::overflow();
  const Ratio base = Quantity{value, &from}.in_base();
  return is_gas_mark(to) ? mark_of(base) : (base - to.offset) / to.to_base;
}

}  // namespace tamis::measure
