#include "core/lua/letters.h"

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

}  // namespace

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
