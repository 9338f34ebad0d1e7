#ifndef CORE_RULES_NEEDS_COLD_H
#define CORE_RULES_NEEDS_COLD_H

#include <string_view>

#include "core/rules/rule.h"

namespace tamis::rules {

/// Whether a food is one that temperature and time must hold in check: bacteria grow in it.
enum class Need : unsigned char {
  no,   ///< too dry or too sweet (water activity), baked through, too acid as stated, or nothing in it feeds them
  yes,  ///< meat, fish, egg, dairy or cooked vegetable and pulse, moist and not acid, by what the fiche lets us
        ///< know
  unknown,  ///< acid, salt, smoke, fat or a food nobody knows may decide it: to be asked, not accused
};

/// Of what comes of the step, by its foods and its composition (water activity at 25 °C, pH and water activity where a
/// trial has measured them).
Need needs_cold(const Check& check, int step);

/// Where that is unknown, what would decide it, for a sentence: "how acid it is"; "" where there is nothing to ask.
std::string_view what_decides_cold(const Check& check, int step);

}  // namespace tamis::rules

#endif
