#ifndef CORE_MEASURE_PHRASE_H
#define CORE_MEASURE_PHRASE_H

#include <cstddef>
#include <string_view>

#include "core/base/ratio.h"

namespace tamis::measure {

/// What the words around a figure do: "at least", "to", "or higher". Table: core/measure/phrases.inc.
enum class PhraseRole : unsigned char {
  about, about_after, at_least, at_most, at_least_after, at_most_after, to, between, from, plus, and_half
};

/// Bytes that a phrase of this role takes at the start of the text, longest first; 0 when there is none. Words end
/// where a word ends; a stop after an abbreviation ("approx.") is taken along.
std::size_t match_phrase(std::string_view text, PhraseRole role, std::string_view language);

/// A number written as a word.
struct NumberWord {
  std::size_t used = 0;
  base::Ratio value;
  bool bare = false;  ///< stands without a unit too
};
NumberWord match_number_word(std::string_view text, std::string_view language);

/// How a role is written in a language: its first phrase ("about", "at least").
std::string_view written_phrase(PhraseRole role, std::string_view language);

}  // namespace tamis::measure

#endif
