#ifndef CORE_PHYSICS_GRID_H
#define CORE_PHYSICS_GRID_H

#include <optional>
#include <utility>
#include <vector>

#include "core/physics/conduction.h"
#include "core/physics/substance.h"

namespace tamis::physics {

/// Conduction on a grid, for what the series of conduction.h cannot do: properties that go with temperature, and ice.
///
/// Finite volumes over a body's half (a brick's eighth), heat content kept in each, implicit in time by Pham's fast enthalpy
/// method (Int. J. Heat Mass Transfer 28, 1985, 2079): a step is solved with the apparent heat capacities of its
/// start, what flowed is then booked as heat and the temperature read from that, so that no heat is lost at the ice's
/// front. A product of shapes is solved direction by direction (locally one-dimensional splitting, order turned about each
/// step). Between cells the conductivity is the mean over their temperatures.
struct Grid {
  int cells = 0;        ///< in each direction; 0: 50 for one, 24 for two, 16 for three
  double change = 0.01;  ///< of the heat still to flow that flows in a step: about ln(1/share left) / change steps
};

/// What happens to a body of one temperature in a medium of steady temperature.
struct Course {
  std::optional<double> seconds;  ///< until the place is at `to`; empty when the medium never brings it there
  std::vector<std::pair<double, double>> points;  ///< (seconds, °C) of that place, from the start on, the last at `to`
  double rests_at = 0;            ///< where it levels off: the medium's temperature
  double heat_out = 0;            ///< J to the m³ of the body that has left it through its surface; below 0 when warmed
  double heat_lost = 0;           ///< J to the m³ that its content has fallen by; the same but for rounding
};
Course course(const Body& body, const Substance& substance, double coefficient, double from, double medium, double to, Place place, const Grid& grid = {});

}  // namespace tamis::physics

#endif
