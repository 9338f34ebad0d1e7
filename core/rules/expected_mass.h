#ifndef CORE_RULES_EXPECTED_MASS_H
#define CORE_RULES_EXPECTED_MASS_H

#include <optional>
#include <string_view>

#include "core/food/food.h"

namespace tamis::rules {

/// What a food can weigh, from the least to the most that is still believed: g a millilitre, or g a piece.
struct MassRange {
  double least = 0;
  double most = 0;
  double usual = 0;          ///< the table's own figure
  std::string_view form;     ///< the form it is of: "chopped", "large"; "" for the plain one
  std::string_view source;
};

/// Of a volume. Where `prep` names a form of the table (sifted, packed, chopped), that form alone counts; else all of
/// them. Both ends are moved out by what a hand and a spoon do (common practice): 8 % for liquids, 20 % for flour,
/// 45 % for cut fruit and vegetables, and by a factor of 2.5 where prep says the food is cut and the table has no
/// such form. Empty when the table knows no volume of it.
std::optional<MassRange> mass_of_volume(const food::Food& food, std::string_view prep);

/// Of one piece. `size` as written ("M", "large"); without it, from the smallest to the largest size of the table.
/// Empty when the table knows no piece of it, and for meat and fish, which are cut to any size.
std::optional<MassRange> mass_of_piece(const food::Food& food, std::string_view size, std::string_view prep);

}  // namespace tamis::rules

#endif
