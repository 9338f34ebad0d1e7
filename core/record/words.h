#ifndef CORE_RECORD_WORDS_H
#define CORE_RECORD_WORDS_H

#include <string>
#include <string_view>

namespace tamis::record {

/// What a batch record says of its own: core/record/words.inc.
enum class Word : unsigned char {
#define RECORD_WORD(name, english, french, german, spanish) name,
#include "core/record/words.inc"
};

/// In the language of a BCP 47 tag where there are words in it, else in English; {x} and {t} filled in.
std::string said(Word word, std::string_view language, std::string_view x = {}, std::string_view t = {});
/// "en", "fr", "de" or "es": the language that said() speaks for a tag.
std::string_view spoken(std::string_view language);

}  // namespace tamis::record

#endif
