#include "core/lua/letters.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"

namespace tamis::lua {
namespace {

char32_t upper_of(char32_t c) {
  if (c >= U'a' && c <= U'z') return c - 32;
  if (c >= 0xE0 && c <= 0xFE && c != 0xF7) return c - 32;
  if (c == 0xFF) return 0x178;
  const bool odd_is_small = (c >= 0x100 && c <= 0x137 && c != 0x131) || (c >= 0x14A && c <= 0x177);
  if (odd_is_small && c % 2 == 1) return c - 1;
  const bool even_is_small = (c >= 0x139 && c <= 0x148) || (c >= 0x179 && c <= 0x17E);
  if (even_is_small && c % 2 == 0) return c - 1;
  return c;
}

enum class Sign : unsigned char { other, letter, joint };  // a joint goes on with a word, and begins none

constexpr auto ascii_signs = [] {
  std::array<Sign, 0x80> out{};
  for (std::size_t c = 0; c < out.size(); ++c) {
    const bool letter = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    out[c] = letter ? Sign::letter : c == '\'' || c == '-' ? Sign::joint : Sign::other;
  }
  return out;
}();

/// What stands at `at`, which goes behind it.
inline Sign next_sign(std::string_view text, std::size_t& at) {
  if (const auto byte = static_cast<unsigned char>(text[at]); byte < 0x80) {
    ++at;
    return ascii_signs[byte];
  }
  const auto scalar = base::next_scalar(text, at);
  return scalar && is_word_letter(*scalar) ? Sign::letter : Sign::other;
}

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n'; }
bool is_lead(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }
char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

bool is_letter_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return false;
  const auto scalar = base::next_scalar(text, at);
  return scalar && is_word_letter(*scalar);
}

bool is_letter_before(std::string_view text, std::size_t at) {
  if (at == 0) return false;
  do --at;
  while (at > 0 && !is_lead(text[at]));
  return is_letter_at(text, at);
}

/// As many bytes as `word` has, the same but for capitals.
bool is_word_at(std::string_view text, std::size_t at, std::string_view word) {
  if (text.size() - at < word.size()) return false;
  const std::string_view there = text.substr(at, word.size());
  const bool ascii = std::equal(there.begin(), there.end(), word.begin(), [](char a, char b) { return small(a) == b; });
  return ascii || (std::any_of(word.begin(), word.end(), [](char c) { return !is_lead(c); }) && base::lower(there) == word);
}

}  // namespace

bool is_word_letter(char32_t c) {
  if (c < 0x80) return ascii_signs[c] == Sign::letter;
  return !base::is_space(c) && !(c >= 0x2010 && c <= 0x206F && c != 0x2019) && c != 0xD7 && c != 0xF7 && c != 0xB0 &&
         !(c >= 0xA1 && c <= 0xBF && c != 0xAA && c != 0xBA && c != 0xB5);
}

std::string_view next_word(std::string_view text, std::size_t& at) {
  std::size_t begin = text.size(), end = 0;
  while (at < text.size()) {
    const std::size_t start = at;
    const Sign sign = next_sign(text, at);
    if (sign == Sign::letter) {
      begin = std::min(begin, start);
      end = at;
    } else if (end > 0 && sign == Sign::other) {
      break;
    }
  }
  return end == 0 ? std::string_view() : text.substr(begin, end - begin);
}

void WordCounter::add(std::string_view piece) {
  for (std::size_t at = 0; at < piece.size();) {
    const Sign sign = next_sign(piece, at);
    count_ += sign == Sign::letter && !inside_ ? 1U : 0U;
    inside_ = sign == Sign::letter || (inside_ && sign == Sign::joint);
  }
}

std::size_t words_end_at(std::string_view text, std::size_t at, std::string_view words) {
  constexpr std::size_t npos = std::string_view::npos;
  if (words.empty() || is_letter_before(text, at)) return npos;
  while (!words.empty()) {
    const std::size_t end = std::min(words.find_first_of(" \t\n"), words.size());
    if (!is_word_at(text, at, words.substr(0, end))) return npos;
    at += end;
    words = base::trimmed(words.substr(end));
    if (words.empty()) break;
    const std::size_t blank = at;
    while (at < text.size() && is_blank(text[at])) ++at;
    if (at == blank) return npos;
  }
  return is_letter_at(text, at) ? npos : at;
}

std::string upper(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    if (const auto scalar = base::next_scalar(text, at))
      base::append_scalar(out, upper_of(*scalar));
    else
      out += text[start];
  }
  return out;
}

}  // namespace tamis::lua
