#include "core/change/compare_words.h"

#include <algorithm>
#include <cstdint>

#include "core/base/utf8.h"

namespace tamis::change {
namespace {

constexpr std::size_t most_compared = 300;        // words of a text that its likeness looks at
constexpr std::size_t most_cells = 4'000'000;     // of the table of a word for word comparison
constexpr std::size_t most_hunks = 3;             // told of one sentence
constexpr std::size_t most_words_of_hunk = 14;

std::size_t common_length(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  std::vector<std::size_t> row(b.size() + 1, 0);
  for (const std::string& word : a) {
    std::size_t diagonal = 0;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t above = row[j + 1];
      row[j + 1] = word == b[j] ? diagonal + 1 : std::max(row[j + 1], row[j]);
      diagonal = above;
    }
  }
  return row.back();
}

/// Lengths of the common subsequences of every two tails.
class Tails {
 public:
  Tails(const std::vector<std::string>& a, const std::vector<std::string>& b, const Hunk& inner)
      : width_(inner.to_end - inner.to_begin + 1), cells_((inner.from_end - inner.from_begin + 1) * width_, 0) {
    for (std::size_t i = inner.from_end - inner.from_begin; i-- > 0;) {
      for (std::size_t j = width_ - 1; j-- > 0;) {
        const bool same = a[inner.from_begin + i] == b[inner.to_begin + j];
        at(i, j) = same ? at(i + 1, j + 1) + 1 : std::max(at(i + 1, j), at(i, j + 1));
      }
    }
  }
  std::uint32_t& at(std::size_t i, std::size_t j) { return cells_[i * width_ + j]; }

 private:
  std::size_t width_;
  std::vector<std::uint32_t> cells_;
};

Hunk without_common_ends(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  Hunk inner{0, a.size(), 0, b.size()};
  while (inner.from_begin < a.size() && inner.to_begin < b.size() && a[inner.from_begin] == b[inner.to_begin]) {
    ++inner.from_begin;
    ++inner.to_begin;
  }
  while (inner.from_end > inner.from_begin && inner.to_end > inner.to_begin &&
         a[inner.from_end - 1] == b[inner.to_end - 1]) {
    --inner.from_end;
    --inner.to_end;
  }
  return inner;
}

std::string cut_quote(const std::vector<std::string>& words, std::size_t begin, std::size_t end) {
  const bool cut = end - begin > most_words_of_hunk;
  return "\"" + joined(words, begin, cut ? begin + most_words_of_hunk : end) + (cut ? " …\"" : "\"");
}

}  // namespace

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  std::string word;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = at;
    const auto scalar = base::next_scalar(text, at);
    if (!scalar || !base::is_space(*scalar)) {
      word += text.substr(begin, at - begin);
      continue;
    }
    if (!word.empty()) out.push_back(std::move(word));
    word.clear();
  }
  if (!word.empty()) out.push_back(std::move(word));
  return out;
}

std::string joined(const std::vector<std::string>& words, std::size_t begin, std::size_t end) {
  std::string out;
  for (std::size_t i = begin; i < end; ++i) out += (i == begin ? "" : " ") + words[i];
  return out;
}

std::vector<std::string> comparable_words(std::string_view text) {
  std::vector<std::string> out = words_of(base::lower(text));
  if (out.size() > most_compared) out.resize(most_compared);
  return out;
}

double likeness(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  if (a.empty() && b.empty()) return 1;
  return 2.0 * static_cast<double>(common_length(a, b)) / static_cast<double>(a.size() + b.size());
}

std::vector<Hunk> hunks_of(const std::vector<std::string>& from, const std::vector<std::string>& to) {
  const Hunk inner = without_common_ends(from, to);
  const std::size_t rows = inner.from_end - inner.from_begin;
  const std::size_t columns = inner.to_end - inner.to_begin;
  if (rows == 0 && columns == 0) return {};
  if (rows == 0 || columns == 0 || rows > most_cells / columns) return {inner};
  Tails tails(from, to, inner);
  std::vector<Hunk> out;
  bool open = false;
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < rows || j < columns) {
    if (i < rows && j < columns && from[inner.from_begin + i] == to[inner.to_begin + j]) {
      open = false;
      ++i;
      ++j;
      continue;
    }
    if (!open) {
      const std::size_t left = inner.from_begin + i;
      const std::size_t right = inner.to_begin + j;
      out.push_back({left, left, right, right});
    }
    open = true;
    if (j >= columns || (i < rows && tails.at(i + 1, j) >= tails.at(i, j + 1))) {
      out.back().from_end = inner.from_begin + ++i;
    } else {
      out.back().to_end = inner.to_begin + ++j;
    }
  }
  return out;
}

std::string differing_words(const std::vector<std::string>& from, const std::vector<std::string>& to,
                            const std::vector<std::string>& from_shown, const std::vector<std::string>& to_shown) {
  const std::vector<Hunk> hunks = hunks_of(from, to);
  std::string out;
  for (std::size_t i = 0; i < std::min(hunks.size(), most_hunks); ++i) {
    const Hunk& hunk = hunks[i];
    if (i > 0) out += "; ";
    const std::string is = cut_quote(to_shown, hunk.to_begin, hunk.to_end);
    const std::string was = cut_quote(from_shown, hunk.from_begin, hunk.from_end);
    if (hunk.to_begin == hunk.to_end) {
      out += was + " is gone";
    } else {
      out += is + (hunk.from_begin == hunk.from_end ? " is new" : ", was " + was);
    }
  }
  if (hunks.size() > most_hunks) out += "; and " + std::to_string(hunks.size() - most_hunks) + " more";
  return out;
}

std::string quoted_start(std::string_view text, std::size_t most_words) {
  const std::vector<std::string> words = words_of(text);
  const bool cut = words.size() > most_words;
  return "\"" + joined(words, 0, cut ? most_words : words.size()) + (cut ? " …\"" : "\"");
}

}  // namespace tamis::change
