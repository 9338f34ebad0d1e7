#ifndef CORE_RULES_VALUE_PATTERN_H
#define CORE_RULES_VALUE_PATTERN_H

#include <string_view>

#include "core/fiche/vocabulary.h"

namespace tamis::rules {

/// Whether a text is spelled as its kind of value asks, white space at the ends let be (schemas/tamis.rnc, val.*).
/// Kinds that are measured (amounts, temperatures ...) or are a choice of words are not judged here and always fit.
bool fits(fiche::Value value, std::string_view text);

/// A form that fits, for the advice: "id", "2026-03-31". Empty for kinds that always fit.
std::string_view form_of(fiche::Value value);

/// Calls `each(word, offset)` for the words of a list, offset in bytes from the start of `text`.
template <class Each>
void for_each_word(std::string_view text, Each each) {
  constexpr std::string_view blank = " \t\n\r";
  for (std::size_t at = text.find_first_not_of(blank); at != text.npos;) {
    const std::size_t end = text.find_first_of(blank, at);
    each(text.substr(at, end == text.npos ? text.npos : end - at), at);
    at = end == text.npos ? text.npos : text.find_first_not_of(blank, end);
  }
}

}  // namespace tamis::rules

#endif
