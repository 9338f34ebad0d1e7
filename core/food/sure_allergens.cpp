#include "core/food/sure_allergens.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"
#include "core/food/allergen_bits.h"

namespace tamis::food {
namespace {

Allergens named(std::string_view word) {
  constexpr std::array<std::string_view, 8> tree_nuts{"almond", "hazelnut", "walnut",    "cashew",
                                                      "pecan",  "pistachio", "macadamia", "Brazil nut"};
  if (std::find(tree_nuts.begin(), tree_nuts.end(), word) != tree_nuts.end()) return allergen::nuts;
  std::vector<std::string_view> unknown;
  return read_allergens(word, unknown);
}

/// "gluten, wheat: Annex II" → gluten | wheat; nothing for a part that says less.
Allergens named_by_the_law(std::string_view part) {
  const std::size_t law = part.find(": Annex II");
  if (law == part.npos) return 0;
  std::string_view names = part.substr(0, law);
  Allergens out = 0;
  while (!names.empty()) {
    const std::size_t comma = std::min(names.find(','), names.size());
    out |= named(base::trimmed(names.substr(0, comma)));
    names.remove_prefix(std::min(comma + 1, names.size()));
  }
  return out;
}

}  // namespace

Allergens sure_allergens(const Food& food) {
  const Allergens all = food.allergens & ~allergen::sulphites;
  const bool by_nature = food.allergen_source.ends_with("assumed for the generic food");  // the row names no source
  if (by_nature || food.allergen_source.find("assumed") == std::string_view::npos) return all;
  Allergens out = 0;
  for (std::string_view rest = food.allergen_source; !rest.empty();) {
    const std::size_t end = std::min(rest.find(';'), rest.size());
    out |= named_by_the_law(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return out & all;
}

}  // namespace tamis::food
