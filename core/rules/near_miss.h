#ifndef CORE_RULES_NEAR_MISS_H
#define CORE_RULES_NEAR_MISS_H

#include <span>
#include <string>
#include <string_view>

namespace tamis::rules {

/// The word that was most likely meant by a mistyped one.
struct NearMiss {
  std::string_view word;  ///< "" when none is near enough to be worth saying
  bool sure = false;      ///< the only one so near, and so near that it may be put in without asking
};

/// Sure: no other word is within one more edit, and the edits are at most one in three letters.
NearMiss near_miss(std::string_view typed, std::span<const std::string_view> words);

/// "a, b or c", at most `most` of them, then "…". Empty for no words.
std::string list_of(std::span<const std::string_view> words, std::size_t most = 12);

std::string quoted(std::string_view text);  ///< "text" in double quotes, long text cut with "…"

}  // namespace tamis::rules

#endif
