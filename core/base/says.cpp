#include "core/base/says.h"

namespace tamis::base {
namespace {

bool starts_word(std::string_view text, std::size_t at) {
  if (at == 0) return true;
  const auto before = static_cast<unsigned char>(text[at - 1]);
  const bool letter = (before >= 'a' && before <= 'z') || before >= 0x80;
  return !letter;
}

}  // namespace

bool says(std::string_view text, std::initializer_list<std::string_view> words) {
  for (const std::string_view word : words) {
    for (std::size_t at = text.find(word); at != text.npos; at = text.find(word, at + 1)) {
      if (starts_word(text, at)) return true;
    }
  }
  return false;
}

}  // namespace tamis::base
