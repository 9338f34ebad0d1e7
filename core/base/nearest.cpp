#include "core/base/nearest.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/utf8.h"

namespace tamis::base {
namespace {

std::u32string scalars(std::string_view text) {
  std::u32string out;
  for (std::size_t at = 0; at < text.size();) out += next_scalar(text, at).value_or(0xFFFD);
  return out;
}

std::size_t worth_saying(std::size_t length) { return length <= 2 ? 0 : length <= 4 ? 1 : length <= 8 ? 2 : 3; }

}  // namespace

std::size_t edit_distance(std::string_view a_text, std::string_view b_text, std::size_t limit) {
  const std::u32string a = scalars(a_text);
  const std::u32string b = scalars(b_text);
  const std::size_t gap = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
  if (gap > limit) return limit + 1;
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> above(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, replace});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    if (*std::min_element(row.begin(), row.end()) > limit) return limit + 1;
    std::swap(before, above);
    std::swap(above, row);
  }
  return std::min(above[b.size()], limit + 1);
}

std::string_view nearest(std::string_view typed, std::span<const std::string_view> words) {
  const std::string wanted = lower(typed);
  const std::size_t length = count_scalars(wanted);
  std::size_t best = worth_saying(length) + 1;
  std::string_view found;
  for (const std::string_view word : words) {
    // Words much longer or shorter are the most; they are passed over before they cost anything.
    const std::size_t other = count_scalars(word);
    if ((other > length ? other - length : length - other) >= best) continue;
    const std::size_t distance = edit_distance(wanted, lower(word), best);
    if (distance < best) {
      best = distance;
      found = word;
    }
  }
  return found;
}

}  // namespace tamis::base
