#include "core/rules/allergens_held.h"

namespace tamis::rules {

const std::vector<tally::AllergenLine>& allergens_held(const Check& check) {
  return check.once<std::vector<tally::AllergenLine>>(
      [&] { return tally::allergen_lines(check.document, check.kitchen, check.library); });
}

}  // namespace tamis::rules
