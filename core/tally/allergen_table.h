#ifndef CORE_TALLY_ALLERGEN_TABLE_H
#define CORE_TALLY_ALLERGEN_TABLE_H

#include <string>
#include <vector>

#include "core/tally/allergens.h"

namespace tamis::tally {

/// One allergen of a dish: where it comes from, and what the author states of it.
struct AllergenFound {
  const food::AllergenName* name = nullptr;
  enum class Level : unsigned char {
    none,      ///< only stated
    may,       ///< a supplier does not rule it out, or it may get in from the kitchen
    option,    ///< with what may be added or taken instead
    assumed,   ///< usual in a food of that name
    contains,  ///< by what a food is, or by its specification
  } level = Level::none;
  struct Source {
    Level level = Level::none;
    std::string food;       ///< or where in the kitchen, of cross-contact
    std::string specified;  ///< date of the supplier's specification; "" without one
    bool cross_contact = false;
    fiche::Node where = fiche::none;
  };
  std::vector<Source> sources;  ///< the surest first
  enum class Stated : unsigned char { no, may, contains } stated = Stated::no;
};
std::string_view level_name(AllergenFound::Level level);  ///< "contains", ...

struct AllergenTable {
  std::vector<AllergenFound> found;   ///< in the order of the law
  std::vector<std::string> unknown;   ///< foods of which nothing is known
  bool statement = false;             ///< the author states them, in words that can be read
};

AllergenTable allergen_table(const fiche::Document& document, const fiche::Kitchen& kitchen, fiche::Library& library,
                             std::string_view language);

}  // namespace tamis::tally

#endif
