#ifndef CORE_RULES_EGG_LIMIT_H
#define CORE_RULES_EGG_LIMIT_H

#include <string_view>

#include "core/rules/food_kinds.h"

namespace tamis::rules {

/// Up to where a mix with raw egg may come, in °C.
struct EggLimit {
  double celsius;         ///< as the egg is there
  double sets;            ///< as it is by itself
  std::string_view said;  ///< "egg yolk sets"
};

/// By the kind of egg (`egg_kinds`), and by what sugar and liquid in the step part it.
EggLimit egg_limit_of(const Check& check, int step, unsigned egg_kinds);

}  // namespace tamis::rules

#endif
