#ifndef CORE_RULES_OVEN_FIGURE_H
#define CORE_RULES_OVEN_FIGURE_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// One figure of an oven temperature (its text, top or bottom) against what ovens do. At most one of the rules about
/// oven figures speaks of it.
struct OvenFigure {
  const fiche::Statement* statement = nullptr;
  double celsius = 0;
  enum class Verdict : unsigned char {
    good,
    no_ovens,         ///< colder than a proofer: a fridge's or a room's figure
    other_scale,      ///< out of the oven's reach, and in it on the other scale
    beyond_belief,    ///< no oven of any kind goes there
  } verdict = Verdict::good;
  double on_other_scale = 0;  ///< °C that the same figure would be
  double oven_least = 0, oven_most = 0;  ///< °C: the reach it was held against
  bool kitchens_own = false;  ///< the reach is that of the kitchen's ovens
};

/// All of the document, in order. An oven's reach: the kitchen's own ovens where it states them; else 60 to 300 °C,
/// to 500 °C for a deck, pizza, stone, wood or tandoor oven (common practice).
std::vector<OvenFigure> oven_figures(const Check& check);

}  // namespace tamis::rules

#endif
