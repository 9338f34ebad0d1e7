#include "core/physics/boiling_point.h"

#include <algorithm>
#include <cmath>

namespace tamis::physics {

double air_pressure(double height_m) {
  constexpr double at_sea_pa = 101325;
  constexpr double at_sea_k = 288.15;
  constexpr double lapse_k_per_m = 0.0065;
  constexpr double gravity = 9.80665;           // m/s²
  constexpr double gas_constant_air = 287.05287;  // J/(kg K), ISO 2533
  const double height = std::clamp(height_m, -1000.0, 11000.0);
  return at_sea_pa * std::pow(1 - lapse_k_per_m * height / at_sea_k, gravity / (gas_constant_air * lapse_k_per_m));
}

// IAPWS-IF97, Revised Release on the Industrial Formulation 1997, table 34 and equation 31. Coefficients from memory,
// held in tests against the release's check values (table 36): 0.1, 1 and 10 MPa.
double boiling_point_at(double pressure_pa) {
  constexpr double n1 = 0.11670521452767e4, n2 = -0.72421316703206e6, n3 = -0.17073846940092e2;
  constexpr double n4 = 0.12020824702470e5, n5 = -0.32325550322333e7, n6 = 0.14915108613530e2;
  constexpr double n7 = -0.48232657361591e4, n8 = 0.40511340542057e6, n9 = -0.23855557567849;
  constexpr double n10 = 0.65017534844798e3;
  const double beta = std::pow(std::clamp(pressure_pa, 611.213, 22.064e6) / 1e6, 0.25);
  const double e = beta * beta + n3 * beta + n6;
  const double f = n1 * beta * beta + n4 * beta + n7;
  const double g = n2 * beta * beta + n5 * beta + n8;
  const double d = 2 * g / (-f - std::sqrt(f * f - 4 * e * g));
  const double kelvin = (n10 + d - std::sqrt((n10 + d) * (n10 + d) - 4 * (n9 + n10 * d))) / 2;
  return kelvin - 273.15;
}

double boiling_point(double height_m) { return boiling_point_at(air_pressure(height_m)); }

}  // namespace tamis::physics
