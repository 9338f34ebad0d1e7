#ifndef CORE_PHYSICS_PLANK_H
#define CORE_PHYSICS_PLANK_H

#include "core/physics/conduction.h"

namespace tamis::physics {

/// Plank's shape factors, for the thickness or the diameter.
struct PlankFactors {
  double P = 0, R = 0;
};
PlankFactors plank_factors(Shape shape);

/// Seconds to freeze what is at its freezing point already, until all its latent heat is gone (Plank 1913); the first
/// estimate: what cools before and after is left out, so that it is too short. kg/m³, J/kg, W/(m K), m (thickness
/// or diameter), W/(m² K), °C.
double plank_time(Shape shape, double size, double density, double latent_heat, double frozen_conductivity,
                  double coefficient, double freezes_at, double medium);

/// The same for any product of shapes, exactly: what is below freezing, summed up over the time, satisfies Poisson's equation
/// (Baiocchi), whose solution in the centre is the sum over time of what conduction leaves of a difference. Lengths as
/// Body has them.
double plank_time(const Body& body, double density, double latent_heat, double frozen_conductivity, double coefficient,
                  double freezes_at, double medium);

/// By how much faster a body freezes or thaws than a slab of its smallest side: 1 for a slab, 2 and 3 for a long
/// cylinder and a sphere. Its other two sides are beta1 and beta2 times the smallest (1e9: without end), Biot number of
/// half the smallest. Hossain and others (1992), after Cleland and Earle: exact for small Biot numbers, for large ones that
/// of an ellipsoid, which is too fast for a body with edges: by 18 % for a square bar, by a third for a cube (ASHRAE Handbook
/// Refrigeration 2010, chapter 20; from memory). The first look only.
double equivalent_dimensions(double biot, double beta1, double beta2);

}  // namespace tamis::physics

#endif
