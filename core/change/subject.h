#ifndef CORE_CHANGE_SUBJECT_H
#define CORE_CHANGE_SUBJECT_H

#include <optional>
#include <string>
#include <string_view>

#include "core/fiche/fiche.h"
#include "core/measure/amount.h"
#include "core/measure/kitchen_tools.h"

namespace tamis::change {

/// What a figure in a fiche is a figure of: found from where it stands.
struct Subject {
  fiche::Node ingredient = fiche::none;  ///< whose amount it is; none for yields, moulds, results of steps
  std::string_view food_id;              ///< as the document says it; "" when it names none
  const food::Food* food = nullptr;
  bool crosses = false;   ///< an amount of that food and nothing else: mass and volume may change places
  bool oven = false;
  bool gate = false;
  bool control = false;
  measure::Tolerance tolerance;
};

Subject subject_of(const fiche::Fiche& fiche, fiche::Node node, fiche::At at);

/// Grams in a millilitre of it, in the form the ingredient's prep names where the table has that ("sifted"). Empty
/// when there is no food or no figure.
std::optional<food::Density> density_of(const fiche::Fiche& fiche, const Subject& subject);

/// Its name in a sentence: the author's, else the table's first, else "this food".
std::string name_of(const fiche::Fiche& fiche, const Subject& subject);

}  // namespace tamis::change

#endif
