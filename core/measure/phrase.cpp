#include "core/measure/phrase.h"

#include <algorithm>
#include <cassert>
#include <string>

#include "core/base/utf8.h"
#include "core/measure/name_index.h"

namespace tamis::measure {
namespace {

struct PhraseRow {
  std::string_view language;
  PhraseRole role;
  std::string_view words;
};

constexpr PhraseRow phrases[] = {
#define PHRASE(language, role, words) {language, PhraseRole::role, words},
#define NUMBER(language, words, value, bare)
#include "core/measure/phrases.inc"
#undef PHRASE
#undef NUMBER
};

struct NumberRow {
  std::string_view language;
  std::string_view words;
  std::string_view value;
  bool bare;
};

constexpr NumberRow numbers[] = {
#define PHRASE(language, role, words)
#define NUMBER(language, words, value, bare) {language, words, value, bare},
#include "core/measure/phrases.inc"
#undef PHRASE
#undef NUMBER
};

/// The scalar at `at` in lower case; a no-break space counts as a space.
char32_t folded(std::string_view text, std::size_t& at) {
  const auto c = base::next_scalar(text, at);
  if (!c) return 0;
  if (base::is_space(*c)) return U' ';
  if (*c >= U'A' && *c <= U'Z') return *c + 32;
  if (*c >= 0xC0 && *c <= 0xDE && *c != 0xD7) return *c + 32;
  return *c;
}

/// Bytes of `text` that `words` (lower case) takes; 0 when it does not start with it as whole words.
std::size_t starts_with_words(std::string_view text, std::string_view words) {
  std::size_t at = 0;
  char32_t last = 0;
  for (std::size_t i = 0; i < words.size();) {
    if (at >= text.size()) return 0;
    std::size_t next = at;
    last = *base::next_scalar(words, i);
    if (folded(text, next) != last) return 0;
    at = next;
  }
  if (!is_letter(last)) return at;
  std::size_t next = at;
  const char32_t after = at < text.size() ? folded(text, next) : U' ';
  return is_letter(after) ? 0 : at;
}

bool is_abbreviation(std::string_view words) {
  return words == "approx" || words == "ca" || words == "env" || words == "aprox" || words == "max" ||
         words == "máx";
}

/// The longest of several phrases separated by "|".
std::size_t longest(std::string_view text, std::string_view list) {
  std::size_t best = 0;
  while (!list.empty()) {
    const std::size_t bar = std::min(list.find('|'), list.size());
    const std::string_view words = list.substr(0, bar);
    std::size_t used = starts_with_words(text, words);
    if (used != 0 && is_abbreviation(words) && used < text.size() && text[used] == '.') ++used;
    best = std::max(best, used);
    list.remove_prefix(std::min(bar + 1, list.size()));
  }
  return best;
}

bool spoken(std::string_view row_language, std::string_view language) {
  return row_language.empty() || row_language == language;
}

/// Words of the languages there are; a text in another one is read with the English words.
std::string_view known(std::string_view language) {
  return language == "fr" || language == "de" || language == "es" ? language : "en";
}

}  // namespace

std::size_t match_phrase(std::string_view text, PhraseRole role, std::string_view language) {
  std::size_t best = 0;
  for (const PhraseRow& row : phrases) {
    if (row.role == role && spoken(row.language, known(language))) best = std::max(best, longest(text, row.words));
  }
  return best;
}

NumberWord match_number_word(std::string_view text, std::string_view language) {
  NumberWord best;
  for (const NumberRow& row : numbers) {
    if (!spoken(row.language, known(language))) continue;
    const std::size_t used = longest(text, row.words);
    if (used <= best.used) continue;
    const auto value = base::Ratio::parse(row.value);
    assert(value);
    best = {used, *value, row.bare};
  }
  return best;
}

std::string_view written_phrase(PhraseRole role, std::string_view language) {
  for (const PhraseRow& row : phrases) {
    if (row.role == role && row.language == known(language)) return row.words.substr(0, row.words.find('|'));
  }
  return {};
}

}  // namespace tamis::measure
