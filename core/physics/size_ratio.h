#ifndef CORE_PHYSICS_SIZE_RATIO_H
#define CORE_PHYSICS_SIZE_RATIO_H

#include "core/physics/conduction.h"

namespace tamis::physics {

/// Two ends of what is not known to the point.
struct Ends {
  double low = 0, high = 0;
};

/// What decides how much longer heat takes through a larger body of the same food: the surface coefficient in
/// W/(m² K), the conductivity in W/(m K), and the share of the first difference that is left when it is done
/// (conduction.h). Density and specific heat fall out of a ratio.
struct Passing {
  Ends coefficient;
  Ends conductivity;
  Ends share;
};

/// Nothing known of the surface: between one that lets heat in so slowly that it alone decides (the time goes with
/// volume over surface: with a slab's depth) and one that is at the medium's temperature at once (with the depth's
/// square).
inline constexpr Ends any_coefficient{1e-3, 1e6};

/// How many times as long the centre of `to` takes as that of `from`, by the series at all ends of `passing`; a
/// slab with heat through both faces and through one. Of a slab from d to D it lies between D/d and its square.
Ends size_ratio(const Body& from, const Body& to, const Passing& passing);

/// The same where it freezes or thaws, by Plank's equation: the conductivity is that of the layer the heat passes,
/// `share` is not asked.
Ends freezing_ratio(const Body& from, const Body& to, const Passing& passing);

}  // namespace tamis::physics

#endif
