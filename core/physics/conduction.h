#ifndef CORE_PHYSICS_CONDUCTION_H
#define CORE_PHYSICS_CONDUCTION_H

#include <optional>
#include <vector>

namespace tamis::physics {

/// Heat that is conducted in a body without moving parts (set, solid, stiff), whose surface a medium of steady
/// temperature cools or warms: Fourier's series (Carslaw and Jaeger, Conduction of Heat in Solids, 1959, chapters 3, 7, 9).
/// Properties are the same all through and at every temperature.

enum class Shape : unsigned char { slab, cylinder, sphere };
enum class Place : unsigned char { centre, mean, surface };

/// One root of the series: what is left after a Fourier number is the sum of factor × exp(−root² Fo).
struct Term {
  double root = 0;
  double centre = 0, mean = 0, surface = 0;  ///< factors
  [[nodiscard]] double factor(Place place) const {
    return place == Place::centre ? centre : place == Place::mean ? mean : surface;
  }
};
/// The term of that number, from 0; biot = coefficient × half thickness (or radius) / conductivity, above 0, taken
/// within 1e-9 and 1e9. Roots are bracketed between the neighbouring zeros and good to about 1e-12.
Term term(Shape shape, double biot, int number);

/// Share left of the first difference from the medium, 1 at the start, towards 0: (T − medium) / (from − medium), at
/// Fourier number fo = diffusivity × time / (half thickness or radius)². As many terms as matter, 400 at most: within
/// 1e-6 from fo = 1e-5 on; before that within 0.01 in the mean; at the surface by the half-space from fo 1e-4 downwards.
double left(Shape shape, double biot, double fo, Place place);

struct Material {
  double density = 0;        ///< kg/m³
  double specific_heat = 0;  ///< J/(kg K)
  double conductivity = 0;   ///< W/(m K)
  [[nodiscard]] double diffusivity() const { return conductivity / (density * specific_heat); }  ///< m²/s
};

/// A body as the product of one to three simple ones: a brick is three slabs, a short cylinder a cylinder and a slab.
/// Lengths in m: a slab's is half its thickness (all of it when the other face lets no heat through), else the radius.
/// The surface of a product is the middle of the first one's face.
struct Body {
  struct Part {
    Shape shape = Shape::slab;
    double length = 0;
  };
  std::vector<Part> parts;
};

/// Share left after `seconds` in a medium with that surface coefficient (W/(m² K)).
double left(const Body& body, const Material& material, double coefficient, double seconds, Place place);

/// Seconds until `share` (0 to 1) is left; 0 when it is 1 or more, empty when it is 0 or less: that is never reached. Within
/// 1e-5 of the time of the series.
std::optional<double> time_to(const Body& body, const Material& material, double coefficient, double share, Place place);

/// The cheap look for a check that must not take long: the first term, and the second to bound what it leaves out. The
/// time of time_to() lies within [low, high] (tried on random bodies, media and places); they are within 1 % where the
/// second term has faded, and 0 to a time that is surely enough where it has not. Two roots a direction and no series;
/// time_to() costs some times that.
struct Bounds {
  double low = 0, high = 0;
};
std::optional<Bounds> screen_time_to(const Body& body, const Material& material, double coefficient, double share, Place place);

}  // namespace tamis::physics

#endif
