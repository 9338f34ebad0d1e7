#include <cmath>

#include "core/tally/nutrition.h"

namespace tamis::tally {
namespace {

/// Halves away from nought; what is a half but for the last bits of the arithmetic is one.
double to_step(double amount, double step) { return std::floor(amount / step + 0.5 + 1e-9) * step; }

Rounded to(double amount, double step, int digits) { return {to_step(amount, step), digits, false}; }

/// Nought up to `nought`, tenths below 10 g, else whole grams.
Rounded eu_grams(double amount, double nought) {
  if (amount <= nought) return {};
  return amount < 9.95 ? to(amount, 0.1, 1) : to(amount, 1, 0);  // what rounds to 10.0 is 10
}

Rounded us_fat(double amount) {
  if (amount < 0.5) return {};
  return amount < 4.75 ? to(amount, 0.5, 1) : to(amount, 1, 0);
}

Rounded us_grams(double amount) {
  if (amount < 0.5) return {};
  return amount < 1 ? Rounded{1, 0, true} : to(amount, 1, 0);
}

Rounded us_milligrams(double amount) {
  if (amount < 5) return {};
  return to(amount, amount <= 140 ? 5 : 10, 0);
}

Rounded us_energy(double amount) {
  if (amount < 5) return {};
  return to(amount, amount <= 50 ? 5 : 10, 0);
}

}  // namespace

Rounded eu_rounded(Nutrient nutrient, double amount) {
  switch (nutrient) {
    case Nutrient::energy_kj:
    case Nutrient::energy_kcal:
    case Nutrient::calories:
    case Nutrient::sodium_mg: return to(amount, 1, 0);
    case Nutrient::saturates: return eu_grams(amount, 0.1);
    case Nutrient::salt:
      if (amount <= 0.0125) return {};
      return amount < 0.995 ? to(amount, 0.01, 2) : to(amount, 0.1, 1);
    default: return eu_grams(amount, 0.5);
  }
}

Rounded us_rounded(Nutrient nutrient, double amount) {
  switch (nutrient) {
    case Nutrient::energy_kj: return to(amount, 1, 0);
    case Nutrient::energy_kcal:
    case Nutrient::calories: return us_energy(amount);
    case Nutrient::fat:
    case Nutrient::saturates: return us_fat(amount);
    case Nutrient::sodium_mg: return us_milligrams(amount);
    default: return us_grams(amount);
  }
}

Rounded us_rounded_cholesterol(double mg) {
  if (mg < 2) return {};
  return mg <= 5 ? Rounded{5, 0, true} : to(mg, 5, 0);
}

double us_servings(double servings) {
  if (servings < 2) return to_step(servings, 1);
  return to_step(servings, servings <= 5 ? 0.5 : 1);
}

}  // namespace tamis::tally
