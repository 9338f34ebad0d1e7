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

double plank_time(const Body& body, double density, double latent_heat, double frozen_conductivity, double coefficient,
                  double freezes_at, double medium) {
  // Over s, m²: diffusivity × time. Steps grow by a tenth until nothing is left; by Simpson's rule.
  const Material unit{1, 1, frozen_conductivity};
  const auto left_at = [&](double s) { return left(body, unit, coefficient, s / frozen_conductivity, Place::centre); };
  double smallest = body.parts.front().length;
  for (const Body::Part& part : body.parts) smallest = std::min(smallest, part.length);
  double sum = 0, from = 0, step = 0.01 * smallest * smallest, at_from = 1;
  while (at_from > 1e-6) {
    const double to = from + step;
    const double at_to = left_at(to);
    sum += step / 6 * (at_from + 4 * left_at(from + step / 2) + at_to);
    from = to;
    at_from = at_to;
    step *= 1.1;
  }
  return density * latent_heat / ((freezes_at - medium) * frozen_conductivity) * sum;
}

double equivalent_dimensions(double biot, double beta1, double beta2) {
  const double film = 2 / std::max(biot, 1e-12);
  const auto direction = [film](double beta) { return (1 + film) / (beta * beta + beta * film); };
  return 1 + direction(beta1) + direction(beta2);
}

}  // namespace tamis::physics
