#include "core/format/encoding.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <string>

#include "core/base/utf8.h"
#include "core/format/format.h"
#include "core/format/xml_chars.h"

namespace tamis::format {
namespace {

constexpr std::string_view save_as_utf8 = "save the file as UTF-8 (\"Save as\", encoding UTF-8)";

base::Finding refusal(std::string rule, std::size_t begin, std::size_t end, std::string message,
                      std::string_view advice) {
  base::Finding made;
  made.rule = std::move(rule);
  made.where = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  made.message = std::move(message);
  made.advice = advice;
  return made;
}

std::string hex(unsigned value, const char* shape) {
  std::array<char, 16> out{};
  std::snprintf(out.data(), out.size(), shape, value);
  return out.data();
}

/// "UTF-16" or "UTF-32" where the first bytes say so, with or without a byte order mark.
std::string_view wide_encoding(std::string_view bytes) {
  using namespace std::string_view_literals;
  if (bytes.starts_with("\xFF\xFE\0\0"sv) || bytes.starts_with("\0\0\xFE\xFF"sv)) return "UTF-32";
  if (bytes.starts_with("\xFF\xFE"sv) || bytes.starts_with("\xFE\xFF"sv)) return "UTF-16";
  if (bytes.size() >= 4 && bytes[1] == '\0' && bytes[2] == '\0') return "UTF-32";
  if (bytes.size() >= 2 && (bytes[0] == '\0') != (bytes[1] == '\0')) return "UTF-16";
  return {};
}

bool ascii_text(std::string_view bytes, std::size_t at) {
  return at >= bytes.size() || (static_cast<unsigned char>(bytes[at]) < 0x80 && bytes[at] != '\0');
}

base::Finding refuse_byte(std::string_view bytes, std::size_t at) {
  const auto byte = static_cast<unsigned char>(bytes[at]);
  std::string message = "byte " + hex(byte, "0x%02X") + " is not UTF-8";
  const bool alone = (at == 0 || ascii_text(bytes, at - 1)) && ascii_text(bytes, at + 1);
  if (alone && byte >= 0xA0) {
    std::string letter;
    base::append_scalar(letter, byte);
    message += "; it looks like Latin-1, where it is \"" + letter + "\"";
  } else if (alone) {
    message += "; it looks like Windows-1252";
  }
  return refusal("not-utf-8", at, at + 1, std::move(message), save_as_utf8);
}

base::Finding refuse_character(std::size_t at, std::size_t end, char32_t c) {
  if (c == 0) {
    return refusal("not-well-formed", at, end, "a NUL byte stands in the text",
                   "take it out; the file may be damaged, or no text file");
  }
  return refusal("not-well-formed", at, end,
                 "the character " + hex(static_cast<unsigned>(c), "U+%04X") + " has no place in a text",
                 "take it out");
}

/// Whether 32 bytes are plain: ASCII, no control character but tab, LF, CR. Without a branch, so that it is done
/// many bytes at a time.
bool plain_block(const char* at) {
  unsigned bad = 0;
  for (int i = 0; i < 32; ++i) {
    const auto c = static_cast<unsigned char>(at[i]);
    bad |=
        static_cast<unsigned>(c >= 0x80) | (static_cast<unsigned>(c < 0x20) & static_cast<unsigned>(c != '\n') &
                                            static_cast<unsigned>(c != '\t') & static_cast<unsigned>(c != '\r'));
  }
  return bad == 0;
}

}  // namespace

std::optional<base::Finding> refuse_bytes(std::string_view bytes) {
  if (bytes.size() > most_bytes) {
    return refusal(
        "over-limit", 0, 0,
        "the file has " + std::to_string((bytes.size() + 0xFFFFFU) >> 20U) + " MB; at most 64 MB are read",
        "split it: one recipe, one file");
  }
  if (const std::string_view wide = wide_encoding(bytes); !wide.empty()) {
    return refusal("not-utf-8", 0, std::min<std::size_t>(bytes.size(), 2),
                   "the file is " + std::string(wide) + ", not UTF-8", save_as_utf8);
  }
  for (std::size_t at = 0; at < bytes.size();) {
    if (at + 32 <= bytes.size() && plain_block(bytes.data() + at)) {
      at += 32;
      continue;
    }
    for (const std::size_t stop = std::min(at + 32, bytes.size()); at < stop;) {
      const auto byte = static_cast<unsigned char>(bytes[at]);
      if (byte >= 0x20 && byte < 0x80) {
        ++at;
        continue;
      }
      const std::size_t start = at;
      const auto c = base::next_scalar(bytes, at);
      if (!c) return refuse_byte(bytes, start);
      if (!is_xml_char(*c)) return refuse_character(start, at, *c);
    }
  }
  return std::nullopt;
}

}  // namespace tamis::format
