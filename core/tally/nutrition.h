#ifndef CORE_TALLY_NUTRITION_H
#define CORE_TALLY_NUTRITION_H

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/tally/makeup.h"

namespace tamis::tally {

/// What a nutrition table can name, in the order of the European one. Grams; energy in kJ and kcal, sodium in mg.
enum class Nutrient : unsigned char {
  energy_kj,           ///< by the factors of Regulation (EU) 1169/2011 Annex XIV
  energy_kcal,         ///< likewise
  fat, saturates,
  carbohydrate,        ///< available: without fibre
  sugars, fibre, protein,
  salt,                ///< sodium times 2.5 (Annex I point 11)
  calories,            ///< kcal by the general factors of 21 CFR 101.9(c)(1)(i)(B)
  total_carbohydrate,  ///< with fibre
  sodium_mg
};
inline constexpr std::size_t nutrients = 12;
std::string_view nutrient_name(Nutrient nutrient);  ///< "energy_kj", ...

/// A sum over foods, and the grams of those foods of which it is not known: never quietly nought.
struct Figure {
  double amount = 0;
  double lacking = 0;  ///< g
};
using Figures = std::array<Figure, nutrients>;

struct Lacking {
  std::string food;
  double grams = 0;
  std::vector<Nutrient> what;  ///< all of them where nothing is known of the food
};

struct Nutrition {
  Figures whole;                 ///< in everything that is made
  struct Of {
    fiche::Node component = fiche::none;
    double grams = 0;            ///< of its own lines, before water boils out
    Figures figures;
  };
  std::vector<Of> components;    ///< what the lines of each bring, in document order; they add up to the whole
  std::vector<Lacking> lacking;  ///< most first
  std::vector<std::string> not_weighed;  ///< lines without a mass: pinches, "to taste", and what cannot be weighed
};

/// By the composition of the foods as they go in; the alcohol of a wine that is boiled is counted as if it stayed.
Nutrition nutrition_of(const Makeup& makeup);

/// A figure as a label prints it: the number, and whether it stands for "less than".
struct Rounded {
  double value = 0;
  int digits = 0;         ///< behind the decimal sign
  bool less_than = false; ///< "less than 5 mg"
};
/// By the European Commission's guidance on tolerances of December 2012 (table of rounding, from memory).
Rounded eu_rounded(Nutrient nutrient, double amount);
/// By 21 CFR 101.9(c), for one serving.
Rounded us_rounded(Nutrient nutrient, double amount);
Rounded us_rounded_cholesterol(double mg);
/// By 21 CFR 101.9(b)(8): servings in a container.
double us_servings(double servings);

}  // namespace tamis::tally

#endif
