#ifndef CORE_PHYSICS_LETHALITY_H
#define CORE_PHYSICS_LETHALITY_H

#include <span>
#include <string_view>

namespace tamis::physics {

/// How heat kills one organism in one food: log-linear in time, and tenfold faster every z degrees (Bigelow). Table:
/// core/physics/heat_resistance.inc.
struct HeatResistance {
  std::string_view id;        ///< "salmonella-beef"
  std::string_view organism;  ///< "Salmonella"
  std::string_view food;      ///< as it stands in a sentence: "in whole egg"
  double celsius;             ///< where D is stated
  double d_seconds;           ///< time that leaves a tenth of them there
  double z;                   ///< K
  double from, to;            ///< °C: nothing is counted below, and above no more than at `to`
  double asked;               ///< log10 reductions of what is published for cooking or pasteurising; NaN for none
  std::string_view asked_by;  ///< whose that is; "" for none
  std::string_view source;    ///< of D and z
};

std::span<const HeatResistance> heat_resistances();
/// Null for no id of the table.
const HeatResistance* heat_resistance_named(std::string_view id);

/// log10 reductions a second at a temperature; 0 below `from`.
double lethal_rate(const HeatResistance& of, double celsius);
/// Seconds at a steady temperature for so many log10 reductions; infinite below `from`.
double seconds_for(const HeatResistance& of, double celsius, double logs);

struct CorePoint {
  double seconds = 0;
  double celsius = 0;
};
/// log10 reductions along a curve of core temperatures, straight between its points: the integral of the rate, exact on
/// each piece. Points in the order of time; a NaN parts the curve, and nothing is counted across it.
double log_reductions(const HeatResistance& of, std::span<const CorePoint> curve);
/// The same as time at the table's temperature, in seconds (an F value).
double equivalent_seconds(const HeatResistance& of, std::span<const CorePoint> curve);
/// When the curve has reached so many, in seconds; NaN when it never does.
double when_reached(const HeatResistance& of, std::span<const CorePoint> curve, double logs);

}  // namespace tamis::physics

#endif
