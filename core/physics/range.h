#ifndef CORE_PHYSICS_RANGE_H
#define CORE_PHYSICS_RANGE_H

namespace tamis::physics {

/// What is not known to the point: the ends it is likely to lie between, and the likeliest.
struct Range {
  double low = 0, likely = 0, high = 0;
};

}  // namespace tamis::physics

#endif
