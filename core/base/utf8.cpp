#include "core/base/utf8.h"

namespace tamis::base {
namespace {

bool continues(unsigned char byte) { return (byte & 0xC0U) == 0x80U; }

bool is_combining(char32_t c) {
  return (c >= 0x0300 && c <= 0x036F) || (c >= 0x200B && c <= 0x200F) || (c >= 0xFE00 && c <= 0xFE0F) ||
         (c >= 0x20D0 && c <= 0x20FF) || c == 0xFEFF;
}

bool is_wide(char32_t c) {
  return (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) ||
         (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
         (c >= 0x1F300 && c <= 0x1FAFF) || (c >= 0x20000 && c <= 0x3FFFD);
}

/// Of a letter beyond ASCII.
char32_t lower_scalar(char32_t c) {
  if (c >= 0xC0 && c <= 0xDE && c != 0xD7) return c + 32;
  if (c >= 0x100 && c <= 0x137 && c % 2 == 0) return c + 1;
  if (c >= 0x139 && c <= 0x148 && c % 2 == 1) return c + 1;
  if (c >= 0x14A && c <= 0x177 && c % 2 == 0) return c + 1;
  if (c == 0x178) return 0xFF;
  if (c >= 0x179 && c <= 0x17E && c % 2 == 1) return c + 1;
  return c;
}

}  // namespace

std::optional<char32_t> next_wide_scalar(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  const int length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  char32_t value = lead & (0xFFU >> (length + 1));
  const bool cut = lead < 0xC2 || lead > 0xF4 || at + static_cast<std::size_t>(length) > text.size();
  bool valid = !cut;
  for (int i = 1; valid && i < length; ++i) {
    const unsigned char next = byte(at + static_cast<std::size_t>(i));
    valid = continues(next);
    value = (value << 6U) | (next & 0x3FU);
  }
  const bool overlong = (length == 3 && value < 0x800) || (length == 4 && value < 0x10000);
  if (!valid || overlong || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF)) {
    ++at;
    return std::nullopt;
  }
  at += static_cast<std::size_t>(length);
  return value;
}

std::size_t count_scalars(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) (void)next_scalar(text, at);
  return count;
}

void append_scalar(std::string& out, char32_t c) {
  if (c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) c = 0xFFFD;
  const auto put = [&out](char32_t byte) { out += static_cast<char>(byte); };
  if (c < 0x80) {
    put(c);
  } else if (c < 0x800) {
    put(0xC0 | (c >> 6U));
    put(0x80 | (c & 0x3FU));
  } else if (c < 0x10000) {
    put(0xE0 | (c >> 12U));
    put(0x80 | ((c >> 6U) & 0x3FU));
    put(0x80 | (c & 0x3FU));
  } else {
    put(0xF0 | (c >> 18U));
    put(0x80 | ((c >> 12U) & 0x3FU));
    put(0x80 | ((c >> 6U) & 0x3FU));
    put(0x80 | (c & 0x3FU));
  }
}

std::size_t find_invalid_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    if (static_cast<unsigned char>(text[at]) < 0x80) {
      ++at;
      continue;
    }
    const std::size_t start = at;
    if (!next_scalar(text, at)) return start;
  }
  return std::string_view::npos;
}

std::size_t terminal_width(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    const char32_t c = next_scalar(text, at).value_or(0xFFFD);
    width += is_combining(c) ? 0U : is_wide(c) ? 2U : 1U;
  }
  return width;
}

bool is_space(char32_t c) {
  return c == U' ' || c == U'\t' || c == U'\n' || c == U'\r' || c == 0xA0 || c == 0x2007 || c == 0x2009 ||
         c == 0x200A || c == 0x202F;
}

std::string_view trimmed(std::string_view text) {
  const auto plain = [](char c) { return c > ' ' && c < 0x7F; };
  if (!text.empty() && plain(text.front()) && plain(text.back())) return text;
  std::size_t begin = 0;
  while (begin < text.size()) {
    std::size_t next = begin;
    const auto c = next_scalar(text, next);
    if (!c || !is_space(*c)) break;
    begin = next;
  }
  std::size_t end = text.size();
  while (end > begin) {
    std::size_t last = end - 1;
    while (last > begin && end - last < 4 && continues(static_cast<unsigned char>(text[last]))) --last;
    std::size_t behind = last;
    const auto c = next_scalar(text, behind);
    if (!c || behind != end || !is_space(*c)) break;
    end = last;
  }
  return text.substr(begin, end - begin);
}

std::string lower(std::string_view text) {
  std::string out(text);
  bool wide = false;
  for (char& c : out) {
    const bool capital = c >= 'A' && c <= 'Z';
    wide |= static_cast<unsigned char>(c) >= 0x80;
    c = static_cast<char>(c + (capital ? 'a' - 'A' : 0));
  }
  // Every letter that has a small one here, and the small one, is two bytes long.
  for (std::size_t at = 0; wide && at + 1 < out.size(); ++at) {
    const auto lead = static_cast<unsigned char>(out[at]);
    const auto next = static_cast<unsigned char>(out[at + 1]);
    if (lead < 0xC3 || lead > 0xC5 || !continues(next)) continue;
    const char32_t small = lower_scalar(((lead & 0x1FU) << 6U) | (next & 0x3FU));
    out[at] = static_cast<char>(0xC0 | (small >> 6U));
    out[++at] = static_cast<char>(0x80 | (small & 0x3FU));
  }
  return out;
}

}  // namespace tamis::base
