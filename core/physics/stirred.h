#ifndef CORE_PHYSICS_STIRRED_H
#define CORE_PHYSICS_STIRRED_H

#include <optional>
#include <utility>
#include <vector>

namespace tamis::physics {

/// A liquid that is stirred, boils, or mixes itself: one temperature all through (the lumped model).
struct Pot {
  double heat_capacity = 0;  ///< of all that is in it, J/K
  double area = 0;           ///< m² through which heat passes
  double coefficient = 0;    ///< W/(m² K) from liquid to medium
  double open_area = 0;      ///< m² of surface without a lid, that steams; 0 when covered
  double moving = 0;         ///< W/(m² K) of the moving air above it
};

/// °C after `seconds`, with nothing steaming off: exp(−coefficient area t / heat capacity).
double stirred_celsius(const Pot& pot, double from, double medium, double seconds);
/// Seconds until it is at `to`; empty when the medium never brings it there.
std::optional<double> stirred_time(const Pot& pot, double from, double medium, double to);

/// W that steam carries off an open surface at `celsius` into air at `medium` °C of 80 % humidity: what evaporates follows what moving air takes
/// by convection (Lewis' relation, ASHRAE Handbook Fundamentals, chapter 6, from memory): per W/(m² K), 1/67 W/m² to the
/// Pa of vapour pressure between surface and air. Vapour pressure of water by Magnus' formula (WMO Guide no. 8). Never below 0.
double steaming(const Pot& pot, double celsius, double medium);

/// The course of an open pot, (seconds, °C), in steps of at most 0.5 K, until it is at `to`; empty when it never is. The
/// heat of what evaporates is counted, the mass that goes off is not (about 2 % of a stock from 90 to 20 °C).
std::vector<std::pair<double, double>> open_pot(const Pot& pot, double from, double medium, double to);

/// Seconds to bring it from one temperature to another over a fire that gives `watts` to the pan's contents, in air at
/// `medium` °C; empty when what is lost on the way is more than the fire gives.
std::optional<double> fire_time(const Pot& pot, double watts, double from, double medium, double to);

}  // namespace tamis::physics

#endif
