#ifndef CORE_CHANGE_COMPARE_WORDS_H
#define CORE_CHANGE_COMPARE_WORDS_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tamis::change {

/// A text's words: what stands between white space of any kind, punctuation with its word.
std::vector<std::string> words_of(std::string_view text);
std::string joined(const std::vector<std::string>& words, std::size_t begin, std::size_t end);

/// A text's words for likeness(): without regard to case; of a long text only the beginning.
std::vector<std::string> comparable_words(std::string_view text);

/// How alike two texts are, 0 to 1: twice the longest common subsequence of words over the words of both. The same
/// either way round.
double likeness(const std::vector<std::string>& a, const std::vector<std::string>& b);

/// Words of `from` in whose place stand words of `to`; one of the two may be empty.
struct Hunk {
  std::size_t from_begin = 0, from_end = 0;
  std::size_t to_begin = 0, to_end = 0;
};
std::vector<Hunk> hunks_of(const std::vector<std::string>& from, const std::vector<std::string>& to);

/// "three", was "two"; "by hand" is new; "gently" is gone. At most three hunks, each cut to a few words. The last two
/// are the same words as they are to be shown.
std::string differing_words(const std::vector<std::string>& from, const std::vector<std::string>& to,
                            const std::vector<std::string>& from_shown, const std::vector<std::string>& to_shown);

/// The text's first words in quotation marks, with … where some are left out.
std::string quoted_start(std::string_view text, std::size_t most_words);

}  // namespace tamis::change

#endif
