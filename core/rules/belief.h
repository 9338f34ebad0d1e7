#ifndef CORE_RULES_BELIEF_H
#define CORE_RULES_BELIEF_H

#include <span>
#include <string_view>

#include "core/fiche/vocabulary.h"
#include "core/food/food.h"
#include "core/measure/unit.h"

namespace tamis::rules {

/// The least and the most that a figure can be and still be meant. Wide on purpose: what lies outside is a slip of
/// the hand, not an unusual recipe. Table: core/rules/belief.inc.
struct Belief {
  fiche::El element;
  fiche::At attribute;      ///< At::unknown: the element's own text
  measure::Kind kind;
  double least;             ///< base units: g, ml, mm, pieces, s, °C
  double most;
  std::string_view what;    ///< what it is a figure of: "hands-on time"
  std::string_view source;
};
/// Those about one element; its rows stand together in the table.
std::span<const Belief> beliefs_about(fiche::El element);

/// The most of a food a portion, in g, by what the food does.
struct PortionBelief {
  food::Role role;
  double most_g;
  std::string_view source;
};
std::span<const PortionBelief> portion_beliefs();

}  // namespace tamis::rules

#endif
