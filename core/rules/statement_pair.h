#ifndef CORE_RULES_STATEMENT_PAIR_H
#define CORE_RULES_STATEMENT_PAIR_H

#include <vector>

#include "core/fiche/fiche.h"

namespace tamis::rules {

/// Two statements of one thing, both readable: the figure shown and another beside it.
struct StatementPair {
  const fiche::Statement* shown;
  const fiche::Statement* other;
  const food::Food* food = nullptr;  ///< what they are of, where that is known
  std::string_view prep = {};        ///< what is done to it before it is measured
};

/// Text and also (an ingredient's, an amount's, a temperature's ...).
std::vector<StatementPair> also_pairs(const fiche::Fiche& fiche);

/// Each figure and the author's own that a conversion kept: text and was, also and was-also, each and was-each ...
/// Not where the conversion took another food or another oven: there the figure was worked out afresh.
std::vector<StatementPair> was_pairs(const fiche::Fiche& fiche);

/// The ingredient a node belongs to: itself, the one around it, or the only one that the <use> around it names; none
/// when there is no such.
fiche::Node ingredient_of(const fiche::Fiche& fiche, fiche::Node n);

}  // namespace tamis::rules

#endif
