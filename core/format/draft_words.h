#ifndef CORE_FORMAT_DRAFT_WORDS_H
#define CORE_FORMAT_DRAFT_WORDS_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/base/source.h"

namespace tamis::format::draft {

/// One word or figure of the typed text. `text` is in lower case without accents ("Préparer" is "preparer"), so that a
/// recipe typed in a hurry is understood as well as one typed with care.
struct Word {
  base::Span where;
  std::string text;
  bool opens_sentence = false;  ///< first of the text, or behind . ! ? ;
  bool opens_clause = false;    ///< that, or behind , : ( ) and a dash or stroke that stands apart
  [[nodiscard]] bool figure() const;  ///< starts with a digit or a vulgar fraction
};

/// Lower case, without the accents of the languages read here; œ and ß become two letters.
std::string folded_letters(std::string_view text);
/// Without the ending of a plural or of a declined adjective, as far as letters tell.
std::string stem(std::string_view word, std::string_view language);
/// Words of `text`; `offset` is where it stands in the source. Apostrophes and hyphens divide; a decimal figure or a
/// fraction ("1,5", "1/2") stays in one piece.
std::vector<Word> words_of(std::string_view text, std::uint32_t offset = 0);
/// The same text with every run of white space as one space, none at the ends.
std::string folded_space(std::string_view text);

/// Kinds of phrase that passes look for. Table: core/format/draft_words.inc.
enum class Set : unsigned char {
#define DRAFT_SET(name, what) name,
#include "core/format/draft_words.inc"
};

/// The phrases of one language, ready to be looked for.
class Lexicon {
 public:
  explicit Lexicon(std::string_view language);  ///< two letters; an unknown one reads as English

  /// How many words the longest phrase of `set` takes that starts at `at`; 0 when there is none.
  [[nodiscard]] std::size_t match(Set set, std::span<const Word> words, std::size_t at) const;
  /// Index of the first word at which a phrase of `set` starts; words.size() when there is none.
  [[nodiscard]] std::size_t find(Set set, std::span<const Word> words, std::size_t from = 0) const;
  [[nodiscard]] bool has(Set set, std::span<const Word> words) const { return find(set, words) < words.size(); }
  /// The whole of `words` is one phrase of `set`.
  [[nodiscard]] bool is(Set set, std::span<const Word> words) const;

  [[nodiscard]] const std::string& language() const { return language_; }

 private:
  struct Phrase {
    Set set;
    std::vector<std::string> words;
  };
  std::string language_;
  std::unordered_map<std::string, std::vector<Phrase>> by_first_;
};

/// How many words of `words` stand in the list of a language's commonest words (Set::function_word).
std::size_t count_function_words(std::span<const Word> words, std::string_view language);

}  // namespace tamis::format::draft

#endif
