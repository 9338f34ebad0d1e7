#ifndef CORE_TALLY_INGREDIENT_LIST_H
#define CORE_TALLY_INGREDIENT_LIST_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/tally/allergen_words.h"
#include "core/tally/makeup.h"

namespace tamis::tally {

// An ingredient list as the law asks for it: Regulation (EU) 1169/2011, Articles 18, 21 and 22 and Annexes VII and VIII; 21
// CFR 101.4. In descending order of the mass that goes in. One food that comes in several times is one line.
//   EU: water is what is left of it in the end, and is left out where that is at most 5 % (Annex VII A 1; not for meat and
//   fish, whose added water is always named). What is under 2 % may stand in any order behind the rest (Annex VII A 6); a
//   supplier's own list stands word for word in brackets (Annex VII E). The share of what the name draws the eye to is of
//   the mass that went in, in a hundred of what is made (Annex VIII 3).

struct ListOptions {
  Law law = Law::eu;
  bool by_component = false;      ///< components as compound ingredients, each with its own list
  std::string_view language = "en";
};

struct Listed {
  std::string name;
  std::vector<Run> runs;          ///< the name, the allergens it does not name, the supplier's list
  double grams = 0;               ///< that go in; of water in the EU what is left of it
  double share = 0;               ///< of all that is listed, 0 to 1
  std::optional<double> percent;  ///< of what is made; of a food that the name draws the eye to
  bool small = false;             ///< under 2 %: free in its order
  bool weighed = true;            ///< false: its place in the order is not known, or it is a trace
  food::Allergens holds = 0;      ///< surely or usually
  std::string names;              ///< all that the food is called, for the sorts of nut or fish
  std::vector<Listed> parts;      ///< of a component
};

struct IngredientList {
  std::vector<Listed> items;
  bool water_left_out = false;
};

IngredientList ingredient_list(const Makeup& makeup, const fiche::Fiche& fiche, const ListOptions& options);

/// Foods in it that rest on the table's usual food, without a supplier's dated specification; tap water is none.
std::vector<std::string> assumed_foods(const Makeup& makeup, const fiche::Kitchen& kitchen);

/// "Contains: milk, egg, tree nuts (hazelnut)": what stands behind Contains on a US label (21 U.S.C. 343(w)(1)(A)).
std::vector<std::string> us_contains(const IngredientList& list);

}  // namespace tamis::tally

#endif
