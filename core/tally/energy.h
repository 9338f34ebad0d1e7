#ifndef CORE_TALLY_ENERGY_H
#define CORE_TALLY_ENERGY_H

#include <span>
#include <string_view>

namespace tamis::tally {

/// Grams of what gives energy (core/tally/energy.inc). Not a number where it is not known.
struct EnergyGivers {
#define ENERGY(id, kj, kcal) double id = 0;
#include "core/tally/energy.inc"
#undef ENERGY
};

struct EnergyFactor {
  std::string_view id;
  double kj, kcal;  ///< of 1 g
};
std::span<const EnergyFactor> energy_factors();

struct Energy {
  double kj = 0;
  double kcal = 0;
};
/// Regulation (EU) 1169/2011 Annex XIV: each by its factor; kJ and kcal are worked out apart, not one from the other.
Energy eu_energy(const EnergyGivers& grams);

/// 21 CFR 101.9(c)(1)(i)(B): 4, 4 and 9 kcal in a gram of protein, total carbohydrate (fibre in it) and fat, of the grams
/// before they are rounded; 7 of alcohol (from memory).
double us_calories(double protein, double total_carbohydrate, double fat, double alcohol);

}  // namespace tamis::tally

#endif
