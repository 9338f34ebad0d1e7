#ifndef CORE_RULES_CREAM_TO_WHIP_H
#define CORE_RULES_CREAM_TO_WHIP_H

#include <vector>

#include "core/rules/food_kinds.h"

namespace tamis::rules {

/// Cream that is whipped for its own sake: alone or with sugar and flavour, no egg, chocolate or gelatine in it, no siphon.
struct WhippedCream {
  int step = -1;   ///< that whips it; -1: it comes whipped, by its prep
  int thing = -1;  ///< the ingredient with the most cream
  base::Span where;
  flow::Range celsius;     ///< as it goes in; an end that is not known is infinite
  double fat_percent = 0;  ///< the most it can have, of milk and cream together
};
const std::vector<WhippedCream>& whipped_creams(const Check& check);

}  // namespace tamis::rules

#endif
