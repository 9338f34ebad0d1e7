#ifndef CORE_FORMAT_XML_CHARS_H
#define CORE_FORMAT_XML_CHARS_H

#include <array>
#include <cstdint>
#include <string_view>

namespace tamis::format {

/// What a byte can be, so that one look in a table decides (XML 1.0, fifth edition: [3] S, [4] NameStartChar,
/// [4a] NameChar; Namespaces in XML 1.0: no colon in an NCName).
enum ByteClass : std::uint8_t {
  starts_name = 1,  ///< ASCII only; other letters are decoded and looked up
  in_name = 2,      ///< ASCII only
  xml_space = 4,
  stops_text = 8,    ///< may end plain text: < & ] CR and the NUL behind the last byte
  stops_value = 16,  ///< may end a plain attribute value: quotes, < & tab LF CR NUL
  not_ascii = 32,
};

constexpr std::array<std::uint8_t, 256> make_byte_classes() {
  std::array<std::uint8_t, 256> made{};
  for (unsigned c = 0; c < 256; ++c) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
    const bool part = letter || (c >= '0' && c <= '9') || c == '-' || c == '.';
    const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    const bool text = c == '<' || c == '&' || c == ']' || c == '\r' || c == 0;
    const bool value = c == '"' || c == '\'' || c == '<' || c == '&' || c == 0 || (space && c != ' ');
    made[c] = static_cast<std::uint8_t>((letter ? starts_name : 0) | (part ? in_name : 0) |
                                        (space ? xml_space : 0) | (text ? stops_text : 0) |
                                        (value ? stops_value : 0) | (c >= 0x80 ? not_ascii : 0));
  }
  return made;
}
inline constexpr std::array<std::uint8_t, 256> byte_classes = make_byte_classes();

inline bool is(char c, std::uint8_t classes) {
  return (byte_classes[static_cast<unsigned char>(c)] & classes) != 0;
}

/// End of the name without colon (NCName) that starts at `at`; `at` itself when none does. The text must be valid
/// UTF-8 and end with a NUL.
const char* skip_name(const char* at);

/// Whether all of the text is one name without colon / a name with at most one prefix before it.
bool is_plain_name(std::string_view text);
bool is_prefixed_name(std::string_view text);

/// XML 1.0 [2] Char: what may stand in a document at all.
bool is_xml_char(char32_t c);

/// Offset of the first control character or noncharacter (U+FFFE, U+FFFF) that XML can't hold; npos when there is
/// none.
std::size_t find_not_xml(std::string_view text);

/// Line ends as LF: CRLF and a lone CR become one LF (XML 1.0, 2.11).
void append_with_line_feeds(std::string& out, std::string_view raw);

}  // namespace tamis::format

#endif
