#include "core/format/draft_words.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"

namespace tamis::format::draft {
namespace {

struct Row {
  Set set;
  std::string_view language;
  std::string_view phrases;
};

constexpr Row rows[] = {
#define DRAFT_WORDS(set, language, phrases) {Set::set, language, phrases},
#include "core/format/draft_words.inc"
};

struct Letter {
  char32_t from;
  std::string_view to;
};

/// Accented letters of English, French, German and Spanish as they are typed without accents.
constexpr Letter letters[] = {
    {U'à', "a"}, {U'á', "a"}, {U'â', "a"}, {U'ã', "a"}, {U'ä', "a"}, {U'å', "a"}, {U'æ', "ae"}, {U'ç', "c"},
    {U'è', "e"}, {U'é', "e"}, {U'ê', "e"}, {U'ë', "e"}, {U'ì', "i"}, {U'í', "i"}, {U'î', "i"},  {U'ï', "i"},
    {U'ñ', "n"}, {U'ò', "o"}, {U'ó', "o"}, {U'ô', "o"}, {U'õ', "o"}, {U'ö', "o"}, {U'ø', "o"},  {U'ù', "u"},
    {U'ú', "u"}, {U'û', "u"}, {U'ü', "u"}, {U'ý', "y"}, {U'ÿ', "y"}, {U'ß', "ss"}, {U'œ', "oe"},
};

constexpr bool is_fraction(char32_t c) { return c == 0xBC || c == 0xBD || c == 0xBE || (c >= 0x2150 && c <= 0x215E); }

constexpr bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }

bool is_letter(char32_t c) {
  if (c < 0x80) return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z');
  if (base::is_space(c)) return false;
  if (c < 0xC0) return c == 0xAA || c == 0xB5 || c == 0xBA;
  if (c == 0xD7 || c == 0xF7) return false;
  return (c < 0x2000 || c > 0x2BFF) && (c < 0x3000 || c > 0x303F) && c < 0xFE00;
}

bool joins_figure(char32_t c) { return c == U'.' || c == U',' || c == U'/' || c == 0x2044; }
bool ends_sentence(char32_t c) { return c == U'.' || c == U'!' || c == U'?' || c == U';' || c == 0x2026; }
bool ends_clause(char32_t c) { return c == U',' || c == U':' || c == U'(' || c == U')' || c == 0x2014; }
/// With a space before it only: "180 °C / 350 °F", but "15–20 minutes".
bool ends_clause_spaced(char32_t c) { return c == U'/' || c == 0x2013; }

char32_t scalar_at(std::string_view text, std::size_t at) {
  return at < text.size() ? base::next_scalar(text, at).value_or(0xFFFD) : 0;
}

/// End of the word that starts at `at`.
std::size_t word_end(std::string_view text, std::size_t at) {
  bool digits = true;
  std::size_t end = at;
  while (end < text.size()) {
    std::size_t next = end;
    const char32_t c = base::next_scalar(text, next).value_or(0xFFFD);
    const bool in_figure = digits && end > at && joins_figure(c) && is_digit(scalar_at(text, next));
    if (!is_letter(c) && !is_digit(c) && !is_fraction(c) && !in_figure) break;
    digits = digits && !is_letter(c);
    end = next;
  }
  return end;
}

bool ends_with(std::string_view word, std::string_view ending, std::size_t least) {
  return word.size() >= least + ending.size() && word.substr(word.size() - ending.size()) == ending;
}

std::string cut(std::string_view word, std::size_t bytes, std::string_view instead = {}) {
  std::string out(word.substr(0, word.size() - bytes));
  out += instead;
  return out;
}

std::string english_stem(std::string_view word) {
  if (ends_with(word, "ies", 2)) return cut(word, 3, "y");
  if (word == "leaves" || word == "halves" || word == "loaves") return cut(word, 3, "f");
  if (ends_with(word, "oes", 3) || ends_with(word, "ches", 2) || ends_with(word, "shes", 2)) return cut(word, 2);
  if (ends_with(word, "s", 2) && !ends_with(word, "ss", 1)) return cut(word, 1);
  return std::string(word);
}

std::string german_stem(std::string_view word) {
  for (const std::string_view ending : {"en", "er", "es", "e", "n", "s"}) {
    if (ends_with(word, ending, ending == "er" ? 2 : 3)) return cut(word, ending.size());
  }
  return std::string(word);
}

std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t end = text.find(at);
    parts.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

}  // namespace

bool Word::figure() const {
  const char32_t c = scalar_at(text, 0);
  return is_digit(c) || is_fraction(c);
}

std::string folded_letters(std::string_view text) {
  const std::string low = base::lower(text);
  if (std::all_of(low.begin(), low.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; })) return low;
  std::string out;
  for (std::size_t at = 0; at < low.size();) {
    const std::size_t start = at;
    const auto c = base::next_scalar(low, at);
    const auto* letter =
        c ? std::find_if(std::begin(letters), std::end(letters), [&](const Letter& l) { return l.from == *c; })
          : std::end(letters);
    out += letter != std::end(letters) ? letter->to : std::string_view(low).substr(start, at - start);
  }
  return out;
}

std::string stem(std::string_view word, std::string_view language) {
  if (language == "de") return german_stem(word);
  if (language == "en") return english_stem(word);
  if (language == "es" && ends_with(word, "es", 4)) return cut(word, 2);
  if (language == "fr" && ends_with(word, "eaux", 1)) return cut(word, 1);
  if (ends_with(word, "s", 3)) return cut(word, 1);
  return std::string(word);
}

std::vector<Word> words_of(std::string_view text, std::uint32_t offset) {
  std::vector<Word> words;
  bool sentence = true;
  bool clause = true;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const char32_t c = base::next_scalar(text, at).value_or(0xFFFD);
    if (!is_letter(c) && !is_digit(c) && !is_fraction(c)) {
      sentence = sentence || ends_sentence(c);
      const bool spaced = start > 0 && text[start - 1] == ' ' && ends_clause_spaced(c);
      clause = clause || sentence || spaced || ends_clause(c);
      continue;
    }
    at = std::max(at, word_end(text, start));
    Word word;
    word.where = {offset + static_cast<std::uint32_t>(start), offset + static_cast<std::uint32_t>(at)};
    word.text = folded_letters(text.substr(start, at - start));
    word.opens_sentence = sentence;
    word.opens_clause = clause;
    words.push_back(std::move(word));
    sentence = clause = false;
  }
  return words;
}

std::string folded_space(std::string_view text) {
  std::string out;
  bool gap = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const auto c = base::next_scalar(text, at);
    if (c && (*c == U' ' || *c == U'\t' || *c == U'\n' || *c == U'\r')) {
      gap = !out.empty();
      continue;
    }
    if (gap) out += ' ';
    gap = false;
    out += text.substr(start, at - start);
  }
  return out;
}

Lexicon::Lexicon(std::string_view language) : language_(language.substr(0, 2)) {
  if (language_ != "fr" && language_ != "de" && language_ != "es") language_ = "en";
  for (const Row& row : rows) {
    if (!row.language.empty() && row.language != language_) continue;
    for (const std::string_view phrase : split(row.phrases, '|')) {
      Phrase made{row.set, {}};
      for (Word& word : words_of(phrase)) made.words.push_back(std::move(word.text));
      if (!made.words.empty()) by_first_[made.words.front()].push_back(std::move(made));
    }
  }
}

std::size_t Lexicon::match(Set set, std::span<const Word> words, std::size_t at) const {
  if (at >= words.size()) return 0;
  const auto found = by_first_.find(words[at].text);
  if (found == by_first_.end()) return 0;
  std::size_t longest = 0;
  for (const Phrase& phrase : found->second) {
    const std::size_t size = phrase.words.size();
    if (phrase.set != set || size <= longest || at + size > words.size()) continue;
    bool same = true;
    for (std::size_t i = 1; i < size && same; ++i) {
      same = words[at + i].text == phrase.words[i] && !words[at + i].opens_sentence;
    }
    if (same) longest = size;
  }
  return longest;
}

std::size_t Lexicon::find(Set set, std::span<const Word> words, std::size_t from) const {
  for (std::size_t i = from; i < words.size(); ++i) {
    if (match(set, words, i) > 0) return i;
  }
  return words.size();
}

bool Lexicon::is(Set set, std::span<const Word> words) const {
  return !words.empty() && match(set, words, 0) == words.size();
}

std::size_t count_function_words(std::span<const Word> words, std::string_view language) {
  std::size_t count = 0;
  for (const Row& row : rows) {
    if (row.set != Set::function_word || row.language != language) continue;
    std::vector<std::string_view> list = split(row.phrases, '|');
    std::sort(list.begin(), list.end());
    for (const Word& word : words) count += std::binary_search(list.begin(), list.end(), word.text) ? 1U : 0U;
  }
  return count;
}

}  // namespace tamis::format::draft
