#include "core/base/says.h"

#include <algorithm>
#include <bitset>

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
  std::bitset<256> begins;
  for (const std::string_view word : words) {
    if (word.empty()) return true;
    begins.set(static_cast<unsigned char>(word.front()));
  }
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (!begins[static_cast<unsigned char>(text[at])] || !starts_word(text, at)) continue;
    const std::string_view here = text.substr(at);
    const auto stands_here = [here](std::string_view word) { return word.front() == here.front() && here.starts_with(word); };
    if (std::any_of(words.begin(), words.end(), stands_here)) return true;
  }
  return false;
}

}  // namespace tamis::base
