#include "core/rules/near_miss.h"

#include <algorithm>

#include "core/base/nearest.h"
#include "core/base/utf8.h"

namespace tamis::rules {

NearMiss near_miss(std::string_view typed, std::span<const std::string_view> words) {
  NearMiss found{base::nearest(typed, words)};
  if (found.word.empty()) return found;
  const std::string wanted = base::lower(typed);
  const std::size_t distance = base::edit_distance(wanted, base::lower(found.word), 3);
  const auto rivals = std::count_if(words.begin(), words.end(), [&](std::string_view word) {
    return word != found.word && base::edit_distance(wanted, base::lower(word), distance + 1) <= distance + 1;
  });
  found.sure = rivals == 0 && 3 * distance <= base::count_scalars(wanted);
  return found;
}

std::string list_of(std::span<const std::string_view> words, std::size_t most) {
  std::string out;
  const std::size_t shown = std::min(words.size(), most);
  for (std::size_t i = 0; i < shown; ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  if (shown < words.size()) out += ", …";
  return out;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t most = 60;
  std::string out = "\"";
  std::size_t at = 0;
  for (std::size_t scalars = 0; at < text.size() && scalars < most; ++scalars) (void)base::next_scalar(text, at);
  out += text.substr(0, at);
  if (at < text.size()) out += "…";
  return out + "\"";
}

}  // namespace tamis::rules
