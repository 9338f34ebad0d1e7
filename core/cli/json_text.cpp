#include "core/cli/json_text.h"

#include <array>
#include <charconv>
#include <cmath>

#include "core/base/utf8.h"

namespace tamis::cli {
namespace {

constexpr std::string_view hex = "0123456789abcdef";

void append_escaped(std::string& out, char32_t scalar) {
  switch (scalar) {
    case '"':
      out += "\\\"";
      return;
    case '\\':
      out += "\\\\";
      return;
    case '\n':
      out += "\\n";
      return;
    case '\r':
      out += "\\r";
      return;
    case '\t':
      out += "\\t";
      return;
    default:
      break;
  }
  if (scalar < 0x20 || scalar == 0x7F) {
    out += "\\u00";
    out += hex[scalar >> 4U];
    out += hex[scalar & 15U];
    return;
  }
  base::append_scalar(out, scalar);
}

}  // namespace

std::string json_string(std::string_view text) {
  std::string out = "\"";
  for (std::size_t at = 0; at < text.size();) append_escaped(out, base::next_scalar(text, at).value_or(0xFFFD));
  return out += '"';
}

JsonList::JsonList(std::string& out, char open, char close, std::string_view between)
    : out_(out), close_(close), between_(between) {
  out_ += open;
}

void JsonList::begin() {
  if (!first_) (out_ += ',') += between_;
  first_ = false;
}

void JsonList::begin(std::string_view name) {
  begin();
  (out_ += json_string(name)) += ": ";
}

void JsonList::item(std::string_view json) {
  begin();
  out_ += json;
}

void JsonList::member(std::string_view name, std::string_view json) {
  begin(name);
  out_ += json;
}

void JsonList::text(std::string_view name, std::string_view value) { member(name, json_string(value)); }

std::string json_number(double value) {
  if (!std::isfinite(value)) return "null";
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  return {digits.data(), end};
}

}  // namespace tamis::cli
