#ifndef CORE_CHANGE_COMPARE_BATCH_H
#define CORE_CHANGE_COMPARE_BATCH_H

#include <map>

#include "core/change/compare_pair.h"
#include "core/change/compare_side.h"

namespace tamis::change {

/// By what the amounts of the new fiche were multiplied as a whole. A factor holds where at least two amounts and two
/// thirds of those that can be set against each other follow it; the factor that the fiches state (scaled-by), or that
/// their portions have, goes before one that only the amounts have.
class Batch {
 public:
  Batch(const Side& from, const Side& to, const Pairs& pairs);

  /// Of the whole fiche; 1 when there is none.
  [[nodiscard]] double factor() const { return whole_; }
  /// Of what stands there in the new fiche: of its component, where that has a factor of its own.
  [[nodiscard]] double factor_at(fiche::Node in_new) const;
  /// Components of the new fiche with a factor of their own.
  [[nodiscard]] const std::map<fiche::Node, double>& components() const { return components_; }

 private:
  const Side& to_;
  double whole_ = 1;
  std::map<fiche::Node, double> components_;
};

/// How an ingredient's amount stands to the old one, by weight of the component it is in, as shares of 1; 0 when a mass
/// in the component is not known.
double share_of_component(const Side& side, fiche::Node ingredient);

}  // namespace tamis::change

#endif
