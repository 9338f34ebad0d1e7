#include "core/tally/mix.h"

#include <algorithm>
#include <numeric>

namespace tamis::tally {

double Mix::mass() const { return std::max(0.0, std::accumulate(grams.begin(), grams.end(), 0.0) - water_out); }

void Mix::put(std::size_t entry, double amount) {
  if (grams.size() <= entry) grams.resize(entry + 1);
  if (used.size() <= entry) used.resize(entry + 1);
  grams[entry] += amount;
  used[entry] += amount;
}

void Mix::add(const Mix& other, double share) {
  if (grams.size() < other.grams.size()) grams.resize(other.grams.size());
  if (used.size() < other.used.size()) used.resize(other.used.size());
  for (std::size_t i = 0; i < other.grams.size(); ++i) grams[i] += share * other.grams[i];
  for (std::size_t i = 0; i < other.used.size(); ++i) used[i] += share * other.used[i];
  water_out += share * other.water_out;
  mass_known = mass_known && other.mass_known;
}

void Mix::lose_water(double amount) { water_out += std::min(amount, mass()); }

void Mix::lose_of_all(double amount) {
  const double whole = mass();
  if (whole <= 0) return;
  const double left = std::max(0.0, 1 - amount / whole);
  for (double& one : grams) one *= left;
  water_out *= left;
}

void Mix::lose_entry(std::size_t entry, double share) {
  if (entry < grams.size()) grams[entry] *= std::max(0.0, 1 - share);
}

}  // namespace tamis::tally
