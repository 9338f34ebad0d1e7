#ifndef CORE_TALLY_MIX_H
#define CORE_TALLY_MIX_H

#include <cstddef>
#include <vector>

namespace tamis::tally {

/// What is in something that a step takes or makes: grams of each line (by its place in Makeup::entries), and the water
/// that has boiled or baked out of all of it together.
struct Mix {
  std::vector<double> grams;  ///< what is in it
  std::vector<double> used;   ///< what went into the making of it, what was lost or taken out again too
  double water_out = 0;
  bool mass_known = true;     ///< false: it was divided, or a loss has no figure

  [[nodiscard]] double mass() const;
  [[nodiscard]] double of(std::size_t entry) const { return entry < grams.size() ? grams[entry] : 0; }
  [[nodiscard]] double used_of(std::size_t entry) const { return entry < used.size() ? used[entry] : 0; }

  void put(std::size_t entry, double amount);
  void add(const Mix& other, double share = 1);
  void lose_water(double amount);    ///< by heat; nothing else goes
  void lose_of_all(double amount);   ///< in the bowl, the frame, the trim: of everything alike
  void lose_entry(std::size_t entry, double share);
};

}  // namespace tamis::tally

#endif
