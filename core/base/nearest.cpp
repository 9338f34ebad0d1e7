#include "core/base/nearest.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/utf8.h"

namespace tamis::base {
namespace {

/// A word's scalar values. Words are short, and many are compared with one: they are kept off the heap.
class Scalars {
 public:
  explicit Scalars(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) add(next_scalar(text, at).value_or(0xFFFD));
  }
  [[nodiscard]] std::size_t size() const { return size_; }
  [[nodiscard]] char32_t operator[](std::size_t i) const { return i < few ? short_[i] : long_[i - few]; }

 private:
  static constexpr std::size_t few = 48;
  void add(char32_t c) {
    if (size_ < few) {
      short_[size_] = c;
    } else {
      long_.push_back(c);
    }
    ++size_;
  }
  char32_t short_[few];
  std::u32string long_;
  std::size_t size_ = 0;
};

/// Three rows of the table of distances are all that is looked at.
class Rows {
 public:
  explicit Rows(std::size_t width) : width_(width) {
    if (width * 3 > std::size(few_)) many_.resize(width * 3);
  }
  std::size_t* row(std::size_t number) { return (many_.empty() ? few_ : many_.data()) + number % 3 * width_; }

 private:
  std::size_t width_;
  std::size_t few_[3 * 49];
  std::vector<std::size_t> many_;
};

std::size_t worth_saying(std::size_t length) { return length <= 2 ? 0 : length <= 4 ? 1 : length <= 8 ? 2 : 3; }

}  // namespace

std::size_t edit_distance(std::string_view a_text, std::string_view b_text, std::size_t limit) {
  const Scalars a(a_text);
  const Scalars b(b_text);
  const std::size_t gap = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
  if (gap > limit) return limit + 1;
  Rows rows(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) rows.row(0)[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t* const row = rows.row(i);
    const std::size_t* const above = rows.row(i - 1);
    const std::size_t* const before = rows.row(i + 1);  // i - 2, three rows going round
    std::size_t least = row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, replace});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
      least = std::min(least, row[j]);
    }
    if (least > limit) return limit + 1;
  }
  return std::min(rows.row(a.size())[b.size()], limit + 1);
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
