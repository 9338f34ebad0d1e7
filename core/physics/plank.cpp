#include "core/physics/plank.h"

#include <algorithm>

namespace tamis::physics {

PlankFactors plank_factors(Shape shape) {
  const double dimensions = shape == Shape::slab ? 1 : shape == Shape::cylinder ? 2 : 3;
  return {1 / (2 * dimensions), 1 / (8 * dimensions)};
}

double plank_time(Shape shape, double size, double density, double latent_heat, double frozen_conductivity,
                  double coefficient, double freezes_at, double medium) {
  const PlankFactors factors = plank_factors(shape);
  return density * latent_heat / (freezes_at - medium) *
         (factors.P * size / coefficient + factors.R * size * size / frozen_conductivity);
}

double equivalent_dimensions(double biot, double beta1, double beta2) {
  const double film = 2 / std::max(biot, 1e-12);
  const auto direction = [film](double beta) { return (1 + film) / (beta * beta + beta * film); };
  return 1 + direction(beta1) + direction(beta2);
}

}  // namespace tamis::physics
