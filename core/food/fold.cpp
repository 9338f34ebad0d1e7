#include "core/food/fold.h"

#include <algorithm>
#include <iterator>

#include "core/base/utf8.h"

namespace tamis::food {
namespace {

/// Base letters of U+00E0 to U+00FF, the lower-case half of Latin-1.
constexpr std::string_view latin[] = {"a", "a", "a", "a", "a", "a", "ae", "c", "e",  "e", "e",
                                      "e", "i", "i", "i", "i", "d", "n",  "o", "o",  "o", "o",
                                      "o", " ", "o", "u", "u", "u", "u",  "y", "th", "y"};

/// Sorted.
constexpr std::string_view idle_words[] = {"a",   "an",  "and", "au", "aux", "d",   "da", "das", "de",  "del",
                                           "der", "des", "di",  "du", "el",  "en",  "et", "in",  "l",   "la",
                                           "le",  "les", "los", "of", "s",   "the", "un", "und", "une", "y"};

std::string_view base_letters(char32_t scalar) {
  if (scalar == 0xDF) return "ss";
  if (scalar == 0x152 || scalar == 0x153) return "oe";
  if (scalar >= 0xC0 && scalar <= 0xDE) scalar += 0x20;
  return scalar >= 0xE0 && scalar <= 0xFF ? latin[scalar - 0xE0] : " ";
}

char lower_ascii(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool is_idle(std::string_view word) {
  return std::binary_search(std::begin(idle_words), std::end(idle_words), word);
}

bool is_letter_or_digit(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

bool ends(std::string_view word, std::string_view ending) {
  return word.size() > ending.size() + 1 && word.ends_with(ending);
}

}  // namespace

std::string fold(std::string_view name) {
  std::string out;
  out.reserve(name.size());
  for (std::size_t at = 0; at < name.size();) {
    const char c = lower_ascii(name[at]);
    std::string_view letters = is_letter_or_digit(c) ? std::string_view(&c, 1) : std::string_view(" ");
    if (static_cast<unsigned char>(c) < 0x80) {
      ++at;
    } else {
      letters = base_letters(base::next_scalar(name, at).value_or(U' '));
    }
    if (letters != " ") {
      out += letters;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string stem(std::string_view word) {
  const auto cut = [&](std::size_t letters, std::string_view with = {}) {
    return std::string(word.substr(0, word.size() - letters)).append(with);
  };
  if (word == "leaves") return "leaf";
  if (word == "halves") return "half";
  if (ends(word, "ies")) return word.size() > 4 ? cut(3, "y") : cut(1);
  if (ends(word, "oes") || ends(word, "ches") || ends(word, "shes") || ends(word, "sses")) return cut(2);
  if (ends(word, "eaux") || ends(word, "oux")) return cut(1);
  if (ends(word, "ss") || ends(word, "us") || ends(word, "is")) return std::string(word);
  if (ends(word, "s")) return cut(1);
  return std::string(word);
}

void stems(std::string_view folded, std::vector<std::string>& out) {
  out.clear();
  const auto collect = [&](bool idle_too) {
    for (std::size_t at = 0; at < folded.size();) {
      const std::size_t end = std::min(folded.find(' ', at), folded.size());
      const std::string_view word = folded.substr(at, end - at);
      at = end + 1;
      if (word.empty()) continue;
      if (idle_too || !is_idle(word)) out.push_back(stem(word));
    }
  };
  collect(false);
  if (out.empty()) collect(true);
}

}  // namespace tamis::food
