#ifndef CORE_PHYSICS_ROAST_H
#define CORE_PHYSICS_ROAST_H

#include <limits>
#include <optional>
#include <span>

#include "core/physics/conduction.h"
#include "core/physics/range.h"

namespace tamis::physics {

/// Air that a piece hangs or lies in for a while.
struct Air {
  double celsius = 0;
  double coefficient = 0;                                    ///< W/(m² K), radiation included
  double moving = 0;                                         ///< of it, what the air itself takes
  double seconds = std::numeric_limits<double>::infinity();  ///< until the core is there, when nothing is said
};

/// A piece of meat of one temperature, and how much of its surface gives off steam as water would: 1 all of it, 0
/// none.
struct Joint {
  Body::Part form;
  Material material;
  double from = 0;  ///< °C
  double wetness = 0;
};

struct Rest {
  double roasted = 0;  ///< s until the core was at the temperature it is lifted out at
  double steamed = 0;  ///< share of the mass that went off as steam by then
  double surface = 0;  ///< °C of it then
  double rise = 0;     ///< K that the core goes on rising in the room; 0 where it falls at once
  double after = 0;    ///< s until it is there
};
/// Roasted through the stages, the last of them until the core is at `pull`, and left in the room's air then.
/// Conduction on 16 shells, in time steps that are stable; the surface takes heat from the air and gives it up to
/// the steam that leaves it, by Lewis' relation as steaming() of stirred.h, into air with 8 kPa of vapour in the
/// oven (what a roast gives off itself, common practice); it never gets above 100 °C: what lies below the crust
/// boils first. Empty where the core is not there in 10 hours. About 25 µs.
std::optional<Rest> roast_and_rest(const Joint& joint, std::span<const Air> oven, double pull, const Air& room);

/// How much of a roast's surface is wet, at both ends: with these it loses an eighth to a fifth of its mass in
/// steam, as roasts do (USDA Table of Cooking Yields for Meat and Poultry, drip included; from memory), and rises
/// by what common practice says: 3 to 8 K, 10 out of a hot oven, 4 out of a gentle one.
inline constexpr double wettest = 0.25, driest = 0.15;

}  // namespace tamis::physics

#endif
