#ifndef CORE_MEASURE_UNIT_H
#define CORE_MEASURE_UNIT_H

#include <span>
#include <string>
#include <string_view>

#include "core/base/ratio.h"

namespace tamis::measure {

/// What a figure is a figure of. Kinds are closed: nothing turns one into another, but a density, which crosses mass
/// and volume, and the mass of a piece, which crosses count and mass.
enum class Kind : unsigned char { mass, volume, length, count, time, temperature, temperature_difference };

/// Whose unit a name means. `si` units belong to everyone; a name owned by more than one of metric, us and imperial
/// ("cup") means something only within a declared system. `trade` units (pinch, drop, leaf, clove) belong to no
/// system either and are known only roughly or by the food.
enum class System : unsigned char { none, si, metric, us, imperial, trade };

/// One unit of the table core/measure/units.inc.
struct Unit {
  std::string_view id;      ///< unique: "g", "cup-us", "tbsp-metric", "degf", "gas-mark", "piece", "leaf"
  Kind kind;
  System system;
  System also;              ///< a second system that uses the very same unit (oz: us and imperial); none otherwise
  base::Ratio to_base;      ///< times this gives g, ml, mm, piece, s, °C
  base::Ratio offset;       ///< then plus this (°F: -160/9); 0 for all others
  bool rough;               ///< a trade measure: a pinch, a drop
  std::string_view source;  ///< where the figure comes from
};

/// All units, in the table's order. Their addresses are their identity.
std::span<const Unit> units();
const Unit* unit_by_id(std::string_view id);  ///< null when there is none

/// Whether a kitchen of that system measures with the unit: its own, those it shares (oz, lb, in, °F are of us and
/// imperial), and si for metric. Trade units belong to all.
bool belongs_to(const Unit& unit, System system);

/// Gas marks are steps, not a scale: only 1/4, 1/2 and 1 to 9 have a temperature.
bool is_gas_mark(const Unit& unit);

/// Names a unit goes by in a language ("g", "gram", "grams" / "EL", "Esslöffel"): for completion, help, near misses.
struct UnitName {
  std::string_view name;
  std::string_view unit;
  std::string_view language;  ///< "" for all
};
std::span<const UnitName> unit_names();

/// The name a figure of the unit is written with: "cup" and "cups", "g", "EL". Languages without a name of their own
/// for it have the English one.
std::string_view written_name(const Unit& unit, std::string_view language, bool many);

std::string_view kind_name(Kind kind);      // "mass", ..., "temperature difference"
std::string_view system_name(System system);  // "metric", "US customary", "imperial"

}  // namespace tamis::measure

#endif
