#ifndef CORE_RULES_SENTENCE_H
#define CORE_RULES_SENTENCE_H

#include <string>
#include <string_view>

#include "core/base/says.h"
#include "core/fiche/document.h"

namespace tamis::rules {

/// What the sentence says before a mark, back to the last full stop or semicolon, in lower case; marks' own words
/// included.
std::string words_before(const fiche::Document& document, fiche::Node mark);

/// All words of the step around a node (or of its parent, outside steps), in lower case.
std::string words_around(const fiche::Document& document, fiche::Node n);

/// The step around a node; none when there is none.
fiche::Node step_of(const fiche::Document& document, fiche::Node n);

using base::says;

/// Words for an oven or what is done in one (en, fr, de, es).
bool says_oven(std::string_view lower_text);
/// Words for the inside of the food (en, fr, de, es).
bool says_core(std::string_view lower_text);

}  // namespace tamis::rules

#endif
