#ifndef CORE_CHANGE_STAND_IN_H
#define CORE_CHANGE_STAND_IN_H

#include <string_view>

#include "core/fiche/document.h"

namespace tamis::change {

// How a food that stands in for the author's is told in the document. A market's and a swap's are alike: was-food keeps
// the author's food, a note behind the line tells the cook. A swap may put a second line in, behind the first.

/// was-food of a line that a swap put in: the author has none such.
inline constexpr std::string_view no_line = "none";

/// The kinds of those notes.
inline constexpr std::string_view market_note = "market";
inline constexpr std::string_view swap_note = "swap";

/// Puts a note behind the ingredient (or the choice it is in), its added line and the notes there: an element of its own,
/// so that no white space of the ingredient is touched.
void write_note(fiche::Document& document, fiche::Node ingredient, std::string_view kind, std::string_view words);

/// Whether another food stands in for the author's here, or the amount follows one that does.
bool stands_in_here(const fiche::Document& document, fiche::Node ingredient);

/// A line that a swap put in.
bool is_added_line(const fiche::Document& document, fiche::Node ingredient);

/// The author's food, name and whatever says more of the food again; the notes and the added line are taken out, the added
/// line's name from the sentences' marks too. Figures stay as they are.
void take_back_food(fiche::Document& document, fiche::Node ingredient);

}  // namespace tamis::change

#endif
