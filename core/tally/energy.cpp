#include "core/tally/energy.h"

namespace tamis::tally {
namespace {

constexpr EnergyFactor factors[] = {
#define ENERGY(id, kj, kcal) {#id, kj, kcal},
#include "core/tally/energy.inc"
#undef ENERGY
};

}  // namespace

std::span<const EnergyFactor> energy_factors() { return factors; }

Energy eu_energy(const EnergyGivers& grams) {
  Energy out;
#define ENERGY(id, of_kj, of_kcal) \
  out.kj += (of_kj)*grams.id;      \
  out.kcal += (of_kcal)*grams.id;
#include "core/tally/energy.inc"
#undef ENERGY
  return out;
}

double us_calories(double protein, double total_carbohydrate, double fat, double alcohol) {
  return 4 * protein + 4 * total_carbohydrate + 9 * fat + 7 * alcohol;
}

}  // namespace tamis::tally
