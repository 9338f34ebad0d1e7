#ifndef CORE_RULES_AGREEMENT_H
#define CORE_RULES_AGREEMENT_H

#include "core/fiche/vocabulary.h"
#include "core/measure/amount.h"

namespace tamis::rules {

/// How far two figures of one kind lie apart, in base units (g, ml, mm, pieces, s, °C).
struct Gap {
  bool apart = false;    ///< further than rounding either figure explains
  double shown = 0;      ///< the two figures that lie furthest apart
  double other = 0;
  double times = 1;      ///< the larger over the smaller; 1 for temperatures
  bool grave = false;    ///< one at least twice the other; for temperatures, four times what rounding explains
};

/// What rounding explains (common practice):
///   - of each figure half of its last written place or fraction (250 g: 5 g; 9 oz: 1/2 oz), at most 6 % of it;
///     twice that when it says "about"; plus `more`, a share of the figure;
///   - of lengths up to 5 cm at least 3 mm (1/2 inch beside 1 cm), of longer ones at least 1.5 mm;
///   - of temperatures 10 °C in an oven (the steps of both dials: 25 °F and 5 °C), 5 °C in a medium, 3 °C in a room,
///     2 °C in a food.
/// Ranges are compared end by end; a figure beside a range must lie in it. Words agree with everything, and so do
/// figures that only a rough measure (a pinch, a can) gives.
Gap gap_between(const measure::Amount& shown, const measure::Amount& other, fiche::El where, double more = 0);

/// Half of the last written place, in base units, at most `most` of the figure.
double slack_of(const std::vector<measure::Quantity>& figure, double most);

/// The same where a card prints fractions of what its scales and spoons show (1/8 oz for four leaves): a fraction may
/// hide up to `most` of the figure, a whole figure 6 %.
double slack_of_printed(const std::vector<measure::Quantity>& figure, double most);

/// A figure of only a rough measure: a pinch, a drop, a can.
bool is_rough(const measure::Amount& amount);

}  // namespace tamis::rules

#endif
