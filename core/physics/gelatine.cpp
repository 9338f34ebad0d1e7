#include "core/physics/gelatine.h"

#include <cmath>

namespace tamis::physics {

double gelatine_factor(double from, double to, BloomRule rule) {
  const double strength = from / to;
  return rule == BloomRule::linear ? strength : std::sqrt(strength);
}

}  // namespace tamis::physics
