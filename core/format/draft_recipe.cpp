#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

void Desk::ask_once(const std::string& about, base::Span where, std::string words) {
  if (asked.insert(about).second) ask(where, std::move(words));
}

std::string slug(std::string_view name, std::size_t most_words) {
  std::string out;
  std::size_t taken = 0;
  for (const Word& word : words_of(name)) {
    std::string kept;
    for (const char c : word.text) {
      if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) kept += c;
    }
    if (kept.empty()) continue;
    if (taken++ == most_words) break;
    if (!out.empty()) out += '-';
    out += kept;
  }
  if (!out.empty() && out[0] >= '0' && out[0] <= '9') out.insert(out.begin(), '_');
  return out;
}

}  // namespace tamis::format::draft
