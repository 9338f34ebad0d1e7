#ifndef CORE_BASE_UTF8_H
#define CORE_BASE_UTF8_H

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace tamis::base {

/// Number of Unicode scalar values; a byte that is not part of valid UTF-8 counts as one.
std::size_t count_scalars(std::string_view text);

/// The same for a sequence whose first byte is not ASCII.
std::optional<char32_t> next_wide_scalar(std::string_view text, std::size_t& at);

/// The scalar value that starts at `at`, which is moved past it. An invalid or cut sequence gives nothing and moves
/// one byte.
inline std::optional<char32_t> next_scalar(std::string_view text, std::size_t& at) {
  const auto byte = static_cast<unsigned char>(text[at]);
  if (byte >= 0x80) return next_wide_scalar(text, at);
  ++at;
  return byte;
}

/// Appends the scalar value's UTF-8 form. Surrogates and values above 10FFFF append U+FFFD.
void append_scalar(std::string& out, char32_t scalar);

/// Offset of the first byte that is not valid UTF-8 (RFC 3629: no overlong forms, no surrogates); npos when all is.
std::size_t find_invalid_utf8(std::string_view text);

/// Columns a terminal gives the text: combining marks and joiners 0, wide East Asian and emoji 2, else 1.
std::size_t terminal_width(std::string_view text);

/// Space, tab, LF, CR, and the no-break and typographic spaces (U+00A0, U+2007, U+2009, U+200A, U+202F).
bool is_space(char32_t scalar);

/// Without white space at both ends, as is_space has it.
std::string_view trimmed(std::string_view text);

/// Lower case of ASCII and of Latin-1 and Latin Extended-A letters; other text is left as it is. Enough for the
/// languages the toolkit reads (en, fr, de, es).
std::string lower(std::string_view text);

}  // namespace tamis::base

#endif
