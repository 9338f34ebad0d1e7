#ifndef CORE_FORMAT_DRAFT_LANGUAGE_H
#define CORE_FORMAT_DRAFT_LANGUAGE_H

#include <span>
#include <string>
#include <string_view>

#include "core/format/draft_words.h"

namespace tamis::format::draft {

/// The language the words are in: "en", "en-US", "en-GB", "fr", "de", "es"; "" when they do not tell.
std::string find_language(std::span<const Word> words, std::string_view text);

/// Whose cups and spoons are meant: "us", "imperial", "metric"; "" when the words leave it open.
std::string find_units(std::span<const Word> words, std::string_view text, std::string_view language);

}  // namespace tamis::format::draft

#endif
