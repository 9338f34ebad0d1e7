#ifndef CORE_RULES_VAGUE_WORDS_H
#define CORE_RULES_VAGUE_WORDS_H

#include <optional>
#include <string>
#include <string_view>

namespace tamis::rules {

/// Where in a text the vague words stand, in bytes.
struct VagueWords {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Words of the table core/rules/vague_words.inc, in the language of the fiche. Texts in any case; nothing for a
/// language that the table does not have.

/// "until it is done" at the end of a clause, at most four words between "until" and the state; not where the sentence
/// keeps something for later.
std::optional<VagueWords> until_without_picture(std::string_view text, std::string_view language);
/// The same for the words of an <until> element, which may lack "until": "done", "the cake is ready".
bool is_no_picture(std::string_view until, std::string_view language);
/// "as usual".
std::optional<VagueWords> leans_on_habit(std::string_view text, std::string_view language);
/// "a little milk": the words from the vague one to the food, which stands within three words.
std::optional<VagueWords> vague_amount(std::string_view text, std::string_view language);

}  // namespace tamis::rules

#endif
