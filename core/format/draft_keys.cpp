#include "core/format/draft_keys.h"

#include <algorithm>

namespace tamis::format::draft {
namespace {

constexpr std::size_t most_words = 8;  // of a name that are looked at: phrases grow with the square

bool may_name(const Lexicon& lexicon, std::span<const Word> words, std::size_t at) {
  if (words[at].figure() || words[at].text.size() < 2) return false;
  return lexicon.match(Set::weak_noun, words, at) == 0 && lexicon.match(Set::prep_word, words, at) == 0;
}

bool head_is_first(const Lexicon& lexicon) { return lexicon.language() == "fr" || lexicon.language() == "es"; }

std::size_t head_at(const Lexicon& lexicon, std::span<const Word> words) {
  const std::size_t size = words.size();
  for (const bool plain : {true, false}) {
    for (std::size_t i = 0; i < size; ++i) {
      const std::size_t at = head_is_first(lexicon) ? i : size - 1 - i;
      const bool adjective = plain && lexicon.match(Set::adjective, words, at) > 0;
      if (may_name(lexicon, words, at) && !adjective) return at;
    }
  }
  return size == 0 ? 0 : head_is_first(lexicon) ? 0 : size - 1;
}

Key key_of(const Lexicon& lexicon, std::span<const Word> words, std::size_t begin, std::size_t end, int rank) {
  Key key;
  key.rank = rank;
  for (std::size_t i = begin; i < end; ++i) key.words.push_back(stem(words[i].text, lexicon.language()));
  return key;
}

/// "cold butter" is "butter" with something done to it: the bare name is as good as the whole.
Key bare_key(const Lexicon& lexicon, std::span<const Word> words) {
  std::size_t begin = 0;
  std::size_t end = words.size();
  while (begin < end && lexicon.match(Set::prep_word, words, begin) == 1) ++begin;
  while (end > begin && lexicon.match(Set::prep_word, words, end - 1) == 1) --end;
  const bool cut = end - begin < words.size();
  return cut && begin < end ? key_of(lexicon, words, begin, end, 0) : Key{};
}

}  // namespace

std::vector<Key> keys_of(const Lexicon& lexicon, std::string_view name) {
  std::vector<Word> words = words_of(name);
  if (const std::size_t end = lexicon.find(Set::name_ends, words); end > 0) words.resize(end);
  if (words.size() > most_words) words.resize(most_words);
  std::vector<Key> keys;
  if (words.empty()) return keys;
  const std::size_t head = head_at(lexicon, words);
  keys.push_back(key_of(lexicon, words, 0, words.size(), 0));
  if (Key bare = bare_key(lexicon, words); !bare.words.empty()) keys.push_back(std::move(bare));
  for (std::size_t begin = 0; begin <= head; ++begin) {
    for (std::size_t end = words.size(); end > head; --end) {
      if (end - begin < words.size()) keys.push_back(key_of(lexicon, words, begin, end, 1));
    }
  }
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool noun = may_name(lexicon, words, i) && words[i].text.size() > 2 &&
                      lexicon.match(Set::adjective, words, i) == 0;
    if (i != head && noun) keys.push_back(key_of(lexicon, words, i, i + 1, 2));
  }
  return keys;
}

std::string head_of(const Lexicon& lexicon, std::string_view name) {
  std::vector<Word> words = words_of(name);
  if (const std::size_t end = lexicon.find(Set::name_ends, words); end > 0) words.resize(end);
  if (words.empty()) return {};
  const std::size_t head = head_at(lexicon, words);
  return may_name(lexicon, words, head) && lexicon.match(Set::adjective, words, head) == 0 ? words[head].text : std::string();
}

}  // namespace tamis::format::draft
