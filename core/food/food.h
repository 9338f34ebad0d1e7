#ifndef CORE_FOOD_FOOD_H
#define CORE_FOOD_FOOD_H

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ratio.h"

namespace tamis::food {

/// Composition of 100 g of the edible part, in g (sodium mg, energy kcal). NaN: not reported, which is not zero.
struct Composition {
  double water, energy_kcal, protein, fat, saturated, carbohydrate, sugars, fibre, ash, sodium_mg, alcohol;
};

/// What a food does in a recipe; it decides how exactly it must be measured (tolerance_of) and what rules look for.
enum class Role : unsigned char {
  other, flour, starch, sugar, fat, dairy, egg, liquid, setting, leavening, yeast, salt, acid, spice, chocolate, nut,
  fruit, vegetable, meat, fish, alcohol, flavouring, garnish
};
std::string_view role_name(Role role);  // "flour", "setting", ...

/// The 14 allergens of Regulation (EU) 1169/2011 Annex II as bits; the 9 of the US (FALCPA and FASTER Act) are among
/// them: milk, egg, fish, crustaceans, tree nuts, peanuts, wheat (bit wheat, beside gluten), soy, sesame.
using Allergens = unsigned;
struct AllergenName {
  std::string_view id;  ///< "gluten", "crustaceans", "egg", "fish", "peanut", "soy", "milk", "nuts", "celery", ...
  unsigned bit;
  std::string_view english;
  std::string_view french;
  bool eu;
  bool us;
  std::string_view source;
};
std::span<const AllergenName> allergen_names();
/// Bits of a list as the fiche writes it ("milk egg nuts"); the words that are no allergen go to `unknown`.
Allergens read_allergens(std::string_view words, std::vector<std::string_view>& unknown);

/// Mass of a household volume or of a piece, with the source beside it.
struct Measure {
  std::string_view what;   ///< "cup", "tbsp", "tsp", "ml", "large", "stick", "leaf"
  double grams;
  std::string_view note = {};    ///< "sifted", "packed", "chopped"; "" for the plain form
  std::string_view source = {};  ///< never empty in foods(): the row's own source stands in
};

/// One food of the table (core/food/table/*.inc), or a kitchen's own made from one.
struct Food {
  std::string_view id;           ///< "butter-unsalted": English, most general word first
  std::string_view english;      ///< names, the display one first: "unsalted butter|butter"
  std::string_view french;
  Role role;
  Composition per_100_g;
  std::string_view composition_source;  ///< "USDA SR28 01145"
  std::span<const Measure> measures;    ///< volumes ("cup", "tbsp", "tsp", "ml") and pieces
  double trim_share;             ///< inedible share as bought, 0 to 1; NaN when not known
  std::string_view trim_source;
  std::string_view splits;       ///< "egg-yolk 17 g + egg-white 33 g", of one usual piece or of 100 g; "" when it does not
  std::string_view splits_source;
  Allergens allergens;           ///< of the generic food: assumed until a supplier's specification says so
  std::string_view allergen_source;
};

std::span<const Food> foods();
const Food* food_by_id(std::string_view id);

/// Exact density in g per ml, by the US customary cup of 236.5882365 ml the source measured with, from the volume
/// measure whose error is smallest: a stated g per ml, then cup, fl oz, tbsp, tsp. Empty when the table has none.
///
/// `note` picks another form ("sifted", "packed", "finely chopped"). Without one, or where the table does not know it,
/// the plain form is taken, or the first of the row where none is plain; `form` says which.
///
/// Spread tells how far the figures that could be meant lie apart (0.1 = ±10 %): those of the form asked for, or, when
/// none was, of all ways of filling the cup (sifted, packed, scooped ...); where the food has no plain form, of all.
struct Density {
  base::Ratio grams_per_ml;
  double spread = 0;
  std::string_view form;
  std::string_view source;
};
std::optional<Density> density_of(const Food& food, std::string_view note = {});

/// Mass of one piece, edible part unless `note` says "in shell"; `size` is as written: "large", "M", "leaf", a grade
/// of it ("bronze"), or both ("leaf bronze"). The usual piece, the first of the row, when it is empty, "piece" or "each".
/// Empty when the table does not know such a piece.
struct Piece {
  base::Ratio grams;
  std::string_view what;
  std::string_view note;
  std::string_view source;
};
std::optional<Piece> piece_of(const Food& food, std::string_view size = {});

/// The share of error a measure of this food may carry (common practice): 1 % setting, salt, yeast, leavening; 2 %
/// what makes the body of a dough, custard or ganache; 5 % fruit, nuts, alcohol; 10 % vegetables, spices, garnish.
base::Ratio tolerance_of(Role role);

/// Foods a written name can mean, best first: exact names, then plural and word-order variants, then near misses.
/// `language` "en" or "fr" is looked in first, then the other.
struct Match {
  const Food* food;
  enum class How : unsigned char { exact, variant, part, near } how;
};
std::vector<Match> look_up(std::string_view name, std::string_view language, std::size_t most = 5);

}  // namespace tamis::food

#endif
