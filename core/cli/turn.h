#ifndef CORE_CLI_TURN_H
#define CORE_CLI_TURN_H

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/food/food.h"
#include "core/measure/amount.h"
#include "core/measure/kitchen_tools.h"
#include "core/measure/write.h"

namespace tamis::cli {

/// One figure turned into another unit.
struct Turned {
  base::Ratio value;  ///< in `unit`
  const measure::Unit* unit = nullptr;
  bool exact = true;    ///< false once a density, the mass of a piece or a rough trade measure had a hand in it
  std::string kitchen;  ///< as the kitchen's scales, spoons, thermometer or oven can do it
  std::string warning;  ///< when rounding costs more than the food bears: a better way to measure
};

/// How to turn, and for whom.
struct Turning {
  const food::Food* food = nullptr;
  const measure::KitchenTools* tools = nullptr;
  measure::Writing writing;
  bool oven = false;  ///< a temperature is the dial's, not the food's
};

/// A figure in base units of `from` (g, ml, mm, pieces, s, °C) in another unit. Crosses mass and volume with the
/// food's density, count and mass with the mass of its piece. Refuses with rule "wrong-kind" when nothing leads
/// across, or "unreadable-amount" when the figure does not fit.
base::Result<Turned> turn(base::Ratio in_base, measure::Kind from, const measure::Unit& to,
                          const Turning& turning);

/// Where the figures come from: the two units, and what led across.
std::string sources_of(const measure::Amount& amount, const measure::Unit& to, const food::Food* food);

/// The units people ask for when they do not say which: the other systems' usual ones of that kind.
std::vector<const measure::Unit*> usual_units(const measure::Amount& amount, const food::Food* food);

}  // namespace tamis::cli

#endif
