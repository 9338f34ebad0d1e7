#include "core/format/xml_chars.h"

#include <string>

#include "core/base/utf8.h"

namespace tamis::format {
namespace {

struct Range {
  char32_t first, last;
};

// XML 1.0 fifth edition, production [4], above ASCII.
constexpr Range start_ranges[] = {
    {0xC0, 0xD6},     {0xD8, 0xF6},     {0xF8, 0x2FF},    {0x370, 0x37D},   {0x37F, 0x1FFF},  {0x200C, 0x200D},
    {0x2070, 0x218F}, {0x2C00, 0x2FEF}, {0x3001, 0xD7FF}, {0xF900, 0xFDCF}, {0xFDF0, 0xFFFD}, {0x10000, 0xEFFFF},
};
// Production [4a], what it adds above ASCII.
constexpr Range part_ranges[] = {{0xB7, 0xB7}, {0x300, 0x36F}, {0x203F, 0x2040}};

template <std::size_t count>
bool within(const Range (&ranges)[count], char32_t c) {
  for (const Range& range : ranges) {
    if (c >= range.first && c <= range.last) return true;
  }
  return false;
}

/// Moves past the letter above ASCII at `at` when it may stand there.
bool skip_letter(const char*& at, bool first) {
  std::size_t length = 1;
  while ((static_cast<unsigned char>(at[length]) & 0xC0U) == 0x80U && length < 4) ++length;
  std::size_t next = 0;
  const auto c = base::next_scalar(std::string_view(at, length), next);
  if (!c || !(within(start_ranges, *c) || (!first && within(part_ranges, *c)))) return false;
  at += next;
  return true;
}

}  // namespace

const char* skip_name(const char* at) {
  if (!is(*at, starts_name) && !(is(*at, not_ascii) && skip_letter(at, true))) return at;
  for (;;) {
    while (is(*at, in_name)) ++at;
    if (!is(*at, not_ascii) || !skip_letter(at, false)) return at;
  }
}

bool is_plain_name(std::string_view text) {
  const std::string closed(text);
  return !text.empty() && skip_name(closed.c_str()) == closed.c_str() + closed.size();
}

bool is_prefixed_name(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) return is_plain_name(text);
  return is_plain_name(text.substr(0, colon)) && is_plain_name(text.substr(colon + 1));
}

bool is_xml_char(char32_t c) {
  if (c < 0x20) return c == U'\t' || c == U'\n' || c == U'\r';
  return c <= 0xD7FF || (c >= 0xE000 && c <= 0xFFFD) || (c >= 0x10000 && c <= 0x10FFFF);
}

std::size_t find_not_xml(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const auto c = base::next_scalar(text, at);
    if (!c || !is_xml_char(*c)) return start;
  }
  return std::string_view::npos;
}

void append_with_line_feeds(std::string& out, std::string_view raw) {
  for (std::size_t at = 0; at < raw.size(); ++at) {
    if (raw[at] != '\r') {
      out += raw[at];
      continue;
    }
    out += '\n';
    if (at + 1 < raw.size() && raw[at + 1] == '\n') ++at;
  }
}

}  // namespace tamis::format
