#ifndef CORE_LUA_LETTERS_H
#define CORE_LUA_LETTERS_H

#include <string>
#include <string_view>

namespace tamis::lua {

/// Capitals of ASCII and of Latin-1 and Latin Extended-A letters: what base::lower turns small. Other text stays.
std::string upper(std::string_view text);

/// A letter or digit of a word, in any script; punctuation, signs and spaces are none.
bool is_word_letter(char32_t c);

/// The next word at or behind `at`, a run of letters and digits with the apostrophes and hyphens in it; "" when there is none.
/// `at` goes behind it.
std::string_view next_word(std::string_view text, std::size_t& at);

/// Counts the words of a text that comes in pieces, as next_word finds them: a word may go on in the next piece.
class WordCounter {
 public:
  void add(std::string_view piece);
  [[nodiscard]] std::size_t count() const { return count_; }

 private:
  std::size_t count_ = 0;
  bool inside_ = false;
};

/// Whether words stand in a text from `at`: whole words, in any case, any white space where they have some. `words` in small
/// letters, trimmed. Gives where they end; npos when they do not stand there.
std::size_t words_end_at(std::string_view text, std::size_t at, std::string_view words);

}  // namespace tamis::lua

#endif
