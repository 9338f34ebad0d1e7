#ifndef CORE_PHYSICS_GELATINE_H
#define CORE_PHYSICS_GELATINE_H

namespace tamis::physics {

/// How strength and dose of gelatine weigh against each other; both are printed, and kitchens follow either.
enum class BloomRule : unsigned char {
  square_root,  ///< C1 x B1^0.5 = C2 x B2^0.5: Gelatin Handbook (GMIA), from memory, and most conversion tables
  linear,       ///< C1 x B1 = C2 x B2: as some makers print it (common practice)
};

/// Grams of gelatine of strength `to` that set as firm as one gram of strength `from`, both in bloom and above 0.
double gelatine_factor(double from, double to, BloomRule rule = BloomRule::square_root);

/// What a gelatine nobody states the strength of is taken for: gold leaf (common practice).
constexpr double usual_bloom = 200;

}  // namespace tamis::physics

#endif
