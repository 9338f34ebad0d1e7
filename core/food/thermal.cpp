#include "core/food/thermal.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tamis::food {
namespace {

/// a + b t + c t², t in °C.
struct Curve {
  double a, b, c;
  [[nodiscard]] double at(double t) const { return a + (b + c * t) * t; }
  [[nodiscard]] double from_zero(double t) const { return (a + (b / 2 + c / 3 * t) * t) * t; }
};
struct Row {
  Curve density, specific_heat, conductivity;
};
constexpr std::array rows{
    /* water */ Row{{997.18, 3.1439e-3, -3.7574e-3}, {4.1289, -9.0864e-5, 5.4731e-6}, {0.57109, 1.7625e-3, -6.7036e-6}},
    /* ice */ Row{{916.89, -0.13071, 0}, {2.0623, 6.0769e-3, 0}, {2.2196, -6.2489e-3, 1.0154e-4}},
    /* protein */ Row{{1329.9, -0.51840, 0}, {2.0082, 1.2089e-3, -1.3129e-6}, {0.17881, 1.1958e-3, -2.7178e-6}},
    /* fat */ Row{{925.59, -0.41757, 0}, {1.9842, 1.4733e-3, -4.8008e-6}, {0.18071, -2.7604e-4, -1.7749e-7}},
    /* carbohydrate */ Row{{1599.1, -0.31046, 0}, {1.5488, 1.9625e-3, -5.9399e-6}, {0.20141, 1.3874e-3, -4.3312e-6}},
    /* fibre */ Row{{1311.5, -0.36589, 0}, {1.8459, 1.8306e-3, -4.6509e-6}, {0.18331, 1.2497e-3, -3.1683e-6}},
    /* ash */ Row{{2423.8, -0.28063, 0}, {1.0926, 1.8896e-3, -3.6817e-6}, {0.32962, 1.4011e-3, -2.9069e-6}},
    /* alcohol */ Row{{806.5, -0.85, 0}, {2.44, 0, 0}, {0.171, 0, 0}},
};
constexpr Curve undercooled{4.1289, -5.3062e-3, 9.9516e-4};  // specific heat of water, −40 to 0 °C

const Row& row(Constituent constituent) { return rows[static_cast<std::size_t>(constituent)]; }

double within(Constituent constituent, double celsius) {
  return std::clamp(celsius, -40.0, constituent == Constituent::ice ? 0.0 : 150.0);
}

/// Masses of each, by the order of Constituent.
std::array<double, rows.size()> masses(const Makeup& makeup, double ice) {
  return {makeup.water - ice, ice, makeup.protein, makeup.fat, makeup.carbohydrate, makeup.fibre, makeup.ash, makeup.alcohol};
}

Thermal mixed(const Makeup& makeup, double ice, double celsius, Lie lie) {
  Thermal out;
  double volume = 0;
  double along = 0;
  double across = 0;
  const auto shares = masses(makeup, ice);
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const auto constituent = static_cast<Constituent>(i);
    const double part = shares[i] / density(constituent, celsius);
    const double k = conductivity(constituent, celsius);
    volume += part;
    along += part * k;
    across += part / k;
    out.specific_heat += shares[i] * specific_heat(constituent, celsius);
  }
  out.density = 1 / volume;
  out.conductivity = lie == Lie::parallel ? along / volume : volume / across;
  return out;
}

double free_water(const Makeup& makeup) {
  constexpr double bound_by_protein = 0.4;  // kg/kg: ASHRAE Refrigeration, chapter 9
  return std::max(0.0, makeup.water - bound_by_protein * makeup.protein);
}

/// Where water with these moles of sugars and other particles freezes, per kg of water.
double freezes_at(double sugars, double others) {
  constexpr double water = 1000 / 18.015;
  constexpr double norrish = 6.47;  // sucrose: Chirife and others (1980), from memory
  constexpr double kelvin_per_ln = 8.314462 * 273.15 * 273.15 / (melting_heat * 18.015);
  const double all = water + sugars + others;
  const double of_sugar = sugars / all;
  return kelvin_per_ln * (std::log(water / all) - norrish * of_sugar * of_sugar);
}

}  // namespace

double density(Constituent constituent, double celsius) { return row(constituent).density.at(within(constituent, celsius)); }

double specific_heat(Constituent constituent, double celsius) {
  const double t = within(constituent, celsius);
  return constituent == Constituent::water && t < 0 ? undercooled.at(t) : row(constituent).specific_heat.at(t);
}

double conductivity(Constituent constituent, double celsius) {
  return row(constituent).conductivity.at(within(constituent, celsius));
}

double sensible_heat(Constituent constituent, double celsius) {
  const double t = within(constituent, celsius);
  const Curve& curve = constituent == Constituent::water && t < 0 ? undercooled : row(constituent).specific_heat;
  return curve.from_zero(t) + curve.at(t) * (celsius - t);
}

MakeupRead makeup_of(const Composition& composition) {
  MakeupRead out;
  const auto take = [&out](double grams, std::string_view name) {
    if (std::isnan(grams)) out.missing.push_back(name);
    return std::isnan(grams) ? 0 : grams;
  };
  Makeup makeup;
  makeup.water = take(composition.water, "water");
  makeup.protein = take(composition.protein, "protein");
  makeup.fat = take(composition.fat, "fat");
  const double carbohydrate = take(composition.carbohydrate, "carbohydrate");
  const bool enough = out.missing.empty();
  makeup.ash = take(composition.ash, "ash");
  makeup.alcohol = take(composition.alcohol, "alcohol");
  makeup.fibre = std::min(carbohydrate, take(composition.fibre, "fibre"));
  makeup.carbohydrate = carbohydrate - makeup.fibre;
  makeup.sugars = std::min(makeup.carbohydrate, take(composition.sugars, "sugars"));
  makeup.salt = std::min(makeup.ash, take(composition.sodium_mg, "sodium") / 1000 * 58.44 / 22.99);

  const double sum = makeup.water + makeup.protein + makeup.fat + carbohydrate + makeup.ash + makeup.alcohol;
  constexpr double may_stay_open = 3;
  const bool open = std::isnan(composition.ash) || std::isnan(composition.alcohol);
  if (!enough || !(sum > 0) || (open && sum < 100 - may_stay_open)) return out;
  for (double* share : {&makeup.water, &makeup.protein, &makeup.fat, &makeup.carbohydrate, &makeup.fibre, &makeup.ash,
                        &makeup.alcohol, &makeup.sugars, &makeup.salt})
    *share /= sum;
  out.makeup = makeup;
  return out;
}

Thermal unfrozen(const Makeup& makeup, double celsius, Lie lie) { return mixed(makeup, 0, celsius, lie); }

FreezingPoint freezing_point(const Makeup& makeup) {
  const double solvent = free_water(makeup);
  if (solvent < 0.01) return {-40, -40, -40};
  const double salt = makeup.salt / 58.44e-3 * 1.86;                            // two ions, osmotic coefficient 0.93
  const double other_ash = (makeup.ash - makeup.salt) / 74.55e-3 * 1.86;
  const double alcohol = makeup.alcohol / 46.07e-3;
  const double sucrose = makeup.sugars / 342.3e-3;
  const double single = makeup.sugars / 180.16e-3;
  const auto at = [&](double sugars, double ash) {
    return std::clamp(freezes_at(sugars / solvent, (salt + ash + alcohol) / solvent), -40.0, -0.05);
  };
  return {at(single, other_ash), at((sucrose + single) / 2, 0.75 * other_ash), at(sucrose, 0.5 * other_ash)};
}

Frozen::Frozen(const Makeup& makeup, double starts) : makeup_(makeup), starts_(std::min(starts, -0.01)) {}

double Frozen::ice(double celsius) const {
  return celsius >= starts_ ? 0 : free_water(makeup_) * (1 - starts_ / celsius);
}

double Frozen::enthalpy(double celsius) const {
  const double frozen = ice(celsius);
  double sum = -melting_heat * frozen;
  const auto shares = masses(makeup_, frozen);
  for (std::size_t i = 0; i < shares.size(); ++i) sum += shares[i] * sensible_heat(static_cast<Constituent>(i), celsius);
  return sum;
}

Thermal Frozen::at(double celsius, Lie lie) const {
  Thermal out = mixed(makeup_, ice(celsius), celsius, lie);
  if (celsius < starts_) {
    // The ice that a degree less makes: its heat of melting at that temperature.
    const double slope = free_water(makeup_) * starts_ / (celsius * celsius);  // d ice / dt, negative
    const double heat = melting_heat + sensible_heat(Constituent::water, celsius) - sensible_heat(Constituent::ice, celsius);
    out.specific_heat -= slope * heat;
  }
  return out;
}

}  // namespace tamis::food
