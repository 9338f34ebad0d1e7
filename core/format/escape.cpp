#include <array>
#include <cstdio>

#include "core/format/format.h"

namespace tamis::format {
namespace {

void append_xml(std::string& out, std::string_view text, std::size_t at, bool attribute) {
  const char c = text[at];
  switch (c) {
    case '&':
      out += "&amp;";
      return;
    case '<':
      out += "&lt;";
      return;
    case '\r':
      out += "&#13;";
      return;
    case '"':
      out += attribute ? "&quot;" : "\"";
      return;
    case '\t':
      out += attribute ? "&#9;" : "\t";
      return;
    case '\n':
      out += attribute ? "&#10;" : "\n";
      return;
    case '>':  // "]]>" must not come about, not even from two texts side by side
      out += !attribute && (at == 0 || text[at - 1] == ']') ? "&gt;" : ">";
      return;
    default:
      out += c;
  }
}

void append_json(std::string& out, char c) {
  switch (c) {
    case '"':
      out += "\\\"";
      return;
    case '\\':
      out += "\\\\";
      return;
    case '\n':
      out += "\\n";
      return;
    case '\t':
      out += "\\t";
      return;
    case '\r':
      out += "\\r";
      return;
    default:
      break;
  }
  if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F) {
    out += c;
    return;
  }
  std::array<char, 8> code{};
  std::snprintf(code.data(), code.size(), "\\u%04x", static_cast<unsigned>(static_cast<unsigned char>(c)));
  out += code.data();
}

}  // namespace

std::string escaped(std::string_view text, fiche::Spelling spelling, bool attribute) {
  std::string out;
  out.reserve(text.size() + 8);
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (spelling == fiche::Spelling::xml) {
      append_xml(out, text, at, attribute);
    } else {
      append_json(out, text[at]);
    }
  }
  return out;
}

}  // namespace tamis::format
