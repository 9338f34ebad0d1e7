// Roots and factors of the series; Boost.Math is seen here alone.
#include <algorithm>
#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "core/physics/conduction.h"

namespace tamis::physics {
namespace {

constexpr double pi = std::numbers::pi;

template <class Function>
double root_between(double low, double high, const Function& function) {
  const double at_low = function(low);
  const double at_high = function(high);
  if (at_low == 0) return low;
  if (at_high == 0) return high;
  std::uintmax_t most = 100;
  const auto bracket = boost::math::tools::toms748_solve(function, low, high, at_low, at_high,
                                                         boost::math::tools::eps_tolerance<double>(46), most);
  return (bracket.first + bracket.second) / 2;
}

double j0(double x) { return boost::math::cyl_bessel_j(0, x); }
double j1(double x) { return boost::math::cyl_bessel_j(1, x); }

/// Near zero the first root is √(dimensions × Bi), and below it by a share of Bi at most.
double least_first(double biot, double dimensions) { return 0.1 * std::sqrt(dimensions * biot / (1 + biot)); }

/// ζ tan ζ = Bi
Term of_slab(double biot, int number) {
  const double low = number == 0 ? least_first(biot, 1) : number * pi;
  Term out;
  out.root = root_between(low, number * pi + pi / 2, [biot](double z) { return z * std::sin(z) - biot * std::cos(z); });
  const double z = out.root;
  out.centre = 4 * std::sin(z) / (2 * z + std::sin(2 * z));
  out.surface = out.centre * std::cos(z);
  out.mean = out.centre * std::sin(z) / z;
  return out;
}

/// ζ J1(ζ) = Bi J0(ζ): between a zero of J1 and the next one of J0.
Term of_cylinder(double biot, int number) {
  const double low = number == 0 ? least_first(biot, 2) : boost::math::cyl_bessel_j_zero(1.0, number);
  const double high = boost::math::cyl_bessel_j_zero(0.0, number + 1);
  Term out;
  out.root = root_between(low, high, [biot](double z) { return z * j1(z) - biot * j0(z); });
  const double z = out.root;
  out.centre = 2 / z * j1(z) / (j0(z) * j0(z) + j1(z) * j1(z));
  out.surface = out.centre * j0(z);
  out.mean = out.centre * 2 * j1(z) / z;
  return out;
}

/// sin z − z cos z, without loss where z is small.
double sin_less(double z) { return z < 0.05 ? z * z * z / 3 * (1 - z * z / 10 * (1 - z * z / 28)) : std::sin(z) - z * std::cos(z); }

/// 1 − ζ cot ζ = Bi
Term of_sphere(double biot, int number) {
  const double low = number == 0 ? least_first(biot, 3) : number * pi;
  Term out;
  out.root = root_between(low, (number + 1) * pi, [biot](double z) { return biot * std::sin(z) - sin_less(z); });
  const double z = out.root;
  out.centre = z < 0.05 ? 1 + z * z / 10 : 4 * sin_less(z) / (2 * z - std::sin(2 * z));
  out.surface = out.centre * std::sin(z) / z;
  out.mean = out.centre * 3 * sin_less(z) / (z * z * z);
  return out;
}

}  // namespace

Term term(Shape shape, double biot, int number) {
  const double bi = std::clamp(biot, 1e-9, 1e9);
  return shape == Shape::slab ? of_slab(bi, number) : shape == Shape::cylinder ? of_cylinder(bi, number) : of_sphere(bi, number);
}

}  // namespace tamis::physics
