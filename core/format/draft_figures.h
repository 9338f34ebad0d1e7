#ifndef CORE_FORMAT_DRAFT_FIGURES_H
#define CORE_FORMAT_DRAFT_FIGURES_H

#include <cstddef>
#include <string_view>

#include "core/format/draft_recipe.h"
#include "core/measure/amount.h"

namespace tamis::format::draft {

/// A figure with its unit at the start of a span.
struct Figure {
  measure::Amount amount;
  std::size_t used = 0;     ///< bytes; 0: none
  bool ambiguous = false;   ///< a bare cup, pint or spoon, and nothing says whose
};

/// The longest figure at the start of `span`, looked for in its first 96 bytes so that a long text stays cheap. Ends
/// where a word ends. A name that belongs to several systems is found as well, and said to be ambiguous.
Figure figure_at(const Desk& desk, base::Span span, measure::Kinds kinds);
Figure figure_in(std::string_view text, measure::Kinds kinds, const measure::Reading& reading);

/// Asks, once a name, whose cup the amount `typed` is in.
void ask_whose(Desk& desk, base::Span where, std::string_view typed);

/// Marks the amounts, temperatures, times and lengths of a step, in order and apart.
void mark_figures(Desk& desk, DraftStep& step);

/// Once links are made: a temperature right behind a food ("the chocolate at 35 °C") is that food's; asks for the rest.
void settle_temperatures(Desk& desk, DraftStep& step);

/// Wraps what stands from "until" to the end of its clause.
void mark_cues(const Desk& desk, DraftStep& step);

}  // namespace tamis::format::draft

#endif
