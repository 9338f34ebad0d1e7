#include "core/record/words.h"

#include <algorithm>
#include <array>

namespace tamis::record {
namespace {

constexpr std::array<std::string_view, 4> languages{"en", "fr", "de", "es"};
using Row = std::array<std::string_view, 4>;

constexpr std::array table{
#define RECORD_WORD(name, english, french, german, spanish) Row{english, french, german, spanish},
#include "core/record/words.inc"
};

void fill(std::string& text, std::string_view mark, std::string_view with) {
  if (const std::size_t at = text.find(mark); at != std::string::npos) text.replace(at, mark.size(), with);
}

}  // namespace

std::string_view spoken(std::string_view language) {
  const std::string_view first = language.substr(0, language.find('-'));
  const auto found = std::find(languages.begin(), languages.end(), first);
  return found == languages.end() ? languages.front() : *found;
}

std::string said(Word word, std::string_view language, std::string_view x, std::string_view t) {
  const auto column =
      static_cast<std::size_t>(std::find(languages.begin(), languages.end(), spoken(language)) - languages.begin());
  std::string out(table[static_cast<std::size_t>(word)][column]);
  fill(out, "{t}", t);
  fill(out, "{x}", x);
  return out;
}

}  // namespace tamis::record
