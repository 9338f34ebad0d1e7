#include "core/measure/phrase.h"

#include <algorithm>
#include <array>
#include <bitset>
#include <cassert>
#include <string>
#include <vector>

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

/// Words of the languages there are; a text in another one is read with the English words.
constexpr std::string_view languages[] = {"en", "fr", "de", "es"};

std::size_t language_number(std::string_view language) {
  const auto* const found = std::find(std::begin(languages), std::end(languages), language);
  return found == std::end(languages) ? 0 : static_cast<std::size_t>(found - std::begin(languages));
}

/// What a text must start with for one of the phrases to stand there: most texts are told by their first byte.
class FirstBytes {
 public:
  void add(std::string_view list) {
    while (!list.empty()) {
      set_.set(static_cast<unsigned char>(list[0]));
      list.remove_prefix(std::min(list.find('|'), list.size() - 1) + 1);
    }
  }
  [[nodiscard]] bool may_start(std::string_view text) const {
    if (text.empty()) return false;
    const char c = text[0];
    return set_[static_cast<unsigned char>(c >= 'A' && c <= 'Z' ? c + 32 : c)];
  }

 private:
  std::bitset<256> set_;
};

constexpr std::size_t role_count = static_cast<std::size_t>(PhraseRole::and_half) + 1;

struct LanguageIndex {
  std::vector<std::string_view> lists[role_count];
  FirstBytes first[role_count];
  std::vector<const NumberRow*> numbers;
  FirstBytes first_of_numbers;
};

std::array<LanguageIndex, std::size(languages)> make_index() {
  std::array<LanguageIndex, std::size(languages)> made;
  for (std::size_t i = 0; i < made.size(); ++i) {
    for (const PhraseRow& row : phrases) {
      if (!row.language.empty() && row.language != languages[i]) continue;
      const auto role = static_cast<std::size_t>(row.role);
      made[i].lists[role].push_back(row.words);
      made[i].first[role].add(row.words);
    }
    for (const NumberRow& row : numbers) {
      if (row.language != languages[i]) continue;
      made[i].numbers.push_back(&row);
      made[i].first_of_numbers.add(row.words);
    }
  }
  return made;
}

const LanguageIndex& index_of(std::string_view language) {
  static const auto made = make_index();
  return made[language_number(language)];
}

}  // namespace

std::size_t match_phrase(std::string_view text, PhraseRole role, std::string_view language) {
  const LanguageIndex& index = index_of(language);
  const auto number = static_cast<std::size_t>(role);
  if (!index.first[number].may_start(text)) return 0;
  std::size_t best = 0;
  for (const std::string_view list : index.lists[number]) best = std::max(best, longest(text, list));
  return best;
}

NumberWord match_number_word(std::string_view text, std::string_view language) {
  const LanguageIndex& index = index_of(language);
  NumberWord best;
  if (!index.first_of_numbers.may_start(text)) return best;
  for (const NumberRow* row : index.numbers) {
    const std::size_t used = longest(text, row->words);
    if (used <= best.used) continue;
    const auto value = base::Ratio::parse(row->value);
    assert(value);
    best = {used, *value, row->bare};
  }
  return best;
}

std::string_view written_phrase(PhraseRole role, std::string_view language) {
  for (const PhraseRow& row : phrases) {
    if (row.role == role && row.language == languages[language_number(language)]) return row.words.substr(0, row.words.find('|'));
  }
  return {};
}

}  // namespace tamis::measure
