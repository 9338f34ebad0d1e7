#ifndef CORE_RULES_STATED_HEAT_H
#define CORE_RULES_STATED_HEAT_H

#include <optional>
#include <string>
#include <vector>

#include "core/flow/heat_words.h"
#include "core/rules/rule.h"

namespace tamis::rules {

/// One temperature in a step's own sentences (marks and those inside until; not gates, controls, notes, rescue), in the
/// order of the words.
struct StatedHeat {
  const fiche::Statement* statement = nullptr;
  fiche::El el = fiche::El::unknown;  ///< food_temp, oven_temp, medium_temp
  std::optional<double> low, high;    ///< °C; what is not bounded is empty ("at most 38 °C" has no low)
  int sentence = 0;                   ///< which sentence of the step it stands in, from 0
  std::string before;                 ///< the words since the mark of a temperature before it in that sentence, lower case
};
const std::vector<StatedHeat>& stated_heats(const Check& check, fiche::Node step);

/// Low and high of a temperature that was read as a figure; "boiling" and other words have none.
std::optional<double> low_of(const fiche::Statement& statement);
std::optional<double> high_of(const fiche::Statement& statement);

/// A temperature at which a step leaves what it makes, where its sentence ends there: the last of the food's, with nothing
/// taken, cooled or waited for behind it, in a step that does not go on by itself. Null otherwise.
const fiche::Statement* left_at(const Check& check, int step);

using flow::says_cooling;
using flow::says_heating;
using flow::says_waiting;
/// Sugar, syrup, caramel, jam, fat to fry in: what gets hotter than boiling water.
bool says_sugar_or_fat(std::string_view lower_text);
/// Pressure cookers and the like.
bool says_pressure(std::string_view lower_text);

}  // namespace tamis::rules

#endif
