#include "core/cli/diff.h"

#include <algorithm>
#include <vector>

// The shortest edit script of lines by the greedy method of E. W. Myers, "An O(ND) Difference Algorithm and Its
// Variations" (1986), over what is left when the common start and end are taken off.

namespace tamis::cli {
namespace {

using Lines = std::vector<std::string_view>;

/// One line of the script: kept (' '), taken out ('-'), put in ('+').
struct Step {
  char what;
  std::string_view line;
};

// Beyond this many changed lines the middle is replaced as a whole: still right, only longer than need be.
constexpr std::ptrdiff_t most_changes = 2000;

Lines lines_of(std::string_view text) {
  Lines lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
    lines.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return lines;
}

/// Furthest x reached on each diagonal k = x - y, one row a number of changes.
struct Reached {
  std::vector<std::vector<std::ptrdiff_t>> rows;
  [[nodiscard]] std::ptrdiff_t at(std::ptrdiff_t changes, std::ptrdiff_t k) const {
    return rows[static_cast<std::size_t>(changes)][static_cast<std::size_t>(k + changes)];
  }
  [[nodiscard]] bool goes_down(std::ptrdiff_t changes, std::ptrdiff_t k) const {
    return k == -changes || (k != changes && at(changes - 1, k - 1) < at(changes - 1, k + 1));
  }
};

/// Number of changes that reach the end of both, or -1 when there are too many.
std::ptrdiff_t search(const Lines& a, const Lines& b, Reached& reached) {
  const auto n = static_cast<std::ptrdiff_t>(a.size());
  const auto m = static_cast<std::ptrdiff_t>(b.size());
  for (std::ptrdiff_t changes = 0; changes <= std::min(n + m, most_changes); ++changes) {
    reached.rows.emplace_back(static_cast<std::size_t>(2 * changes + 1), 0);
    for (std::ptrdiff_t k = -changes; k <= changes; k += 2) {
      std::ptrdiff_t x = 0;
      if (changes > 0)
        x = reached.goes_down(changes, k) ? reached.at(changes - 1, k + 1) : reached.at(changes - 1, k - 1) + 1;
      while (x < n && x - k < m && x - k >= 0 &&
             a[static_cast<std::size_t>(x)] == b[static_cast<std::size_t>(x - k)])
        ++x;
      reached.rows.back()[static_cast<std::size_t>(k + changes)] = x;
      if (x >= n && x - k >= m) return changes;
    }
  }
  return -1;
}

std::vector<Step> script_back(const Lines& a, const Lines& b, const Reached& reached, std::ptrdiff_t changes) {
  std::vector<Step> steps;
  auto x = static_cast<std::ptrdiff_t>(a.size());
  auto y = static_cast<std::ptrdiff_t>(b.size());
  const auto keep_down_to = [&](std::ptrdiff_t stop) {
    for (; x > stop; --x, --y) steps.push_back({' ', a[static_cast<std::size_t>(x - 1)]});
  };
  for (; changes > 0; --changes) {
    const std::ptrdiff_t k = x - y;
    const bool down = reached.goes_down(changes, k);
    const std::ptrdiff_t from = reached.at(changes - 1, down ? k + 1 : k - 1);
    keep_down_to(down ? from : from + 1);
    if (down)
      steps.push_back({'+', b[static_cast<std::size_t>(--y)]});
    else
      steps.push_back({'-', a[static_cast<std::size_t>(--x)]});
  }
  keep_down_to(0);
  std::reverse(steps.begin(), steps.end());
  return steps;
}

std::vector<Step> middle_script(const Lines& a, const Lines& b) {
  Reached reached;
  const std::ptrdiff_t changes = search(a, b, reached);
  if (changes >= 0) return script_back(a, b, reached, changes);
  std::vector<Step> steps;
  for (const std::string_view line : a) steps.push_back({'-', line});
  for (const std::string_view line : b) steps.push_back({'+', line});
  return steps;
}

std::vector<Step> script_of(const Lines& a, const Lines& b) {
  const std::size_t shorter = std::min(a.size(), b.size());
  std::size_t head = 0;
  while (head < shorter && a[head] == b[head]) ++head;
  std::size_t tail = 0;
  while (tail < shorter - head && a[a.size() - 1 - tail] == b[b.size() - 1 - tail]) ++tail;
  const auto part = [head, tail](const Lines& all) {
    return Lines(all.begin() + static_cast<std::ptrdiff_t>(head), all.end() - static_cast<std::ptrdiff_t>(tail));
  };
  std::vector<Step> steps;
  for (std::size_t i = 0; i < head; ++i) steps.push_back({' ', a[i]});
  for (const Step& step : middle_script(part(a), part(b))) steps.push_back(step);
  for (std::size_t i = a.size() - tail; i < a.size(); ++i) steps.push_back({' ', a[i]});
  return steps;
}

constexpr std::size_t context = 3;

/// End of the hunk that starts with the change at `first`: changes closer than twice the context share one.
std::size_t last_of_hunk(const std::vector<Step>& steps, std::size_t first) {
  std::size_t last = first;
  for (std::size_t i = first; i < steps.size() && i <= last + 2 * context + 1; ++i)
    if (steps[i].what != ' ') last = i;
  return last;
}

/// "12,7"; a range without lines names the line before it.
std::string range(std::size_t before, std::size_t count) {
  const std::size_t start = count == 0 ? before : before + 1;
  return std::to_string(start) + (count == 1 ? "" : "," + std::to_string(count));
}

void append_line(std::string& out, const Step& step) {
  (out += step.what) += step.line;
  if (!step.line.ends_with('\n')) out += "\n\\ No newline at end of file\n";
}

}  // namespace

std::string unified_diff(std::string_view path, std::string_view before, std::string_view after) {
  if (before == after) return {};
  const std::vector<Step> steps = script_of(lines_of(before), lines_of(after));
  std::string out = "--- " + std::string(path) + "\n+++ " + std::string(path) + "\n";
  std::size_t old_line = 0;
  std::size_t new_line = 0;
  std::size_t at = 0;
  const auto pass = [&](std::size_t to) {
    for (; at < to; ++at) {
      old_line += steps[at].what != '+' ? 1U : 0U;
      new_line += steps[at].what != '-' ? 1U : 0U;
    }
  };
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (steps[i].what == ' ') continue;
    const std::size_t end = std::min(last_of_hunk(steps, i) + context + 1, steps.size());
    pass(i > context ? std::max(at, i - context) : 0);
    const std::size_t begin = at;
    const std::size_t old_before = old_line;
    const std::size_t new_before = new_line;
    pass(end);
    out += "@@ -" + range(old_before, old_line - old_before) + " +" + range(new_before, new_line - new_before) +
           " @@\n";
    for (std::size_t k = begin; k < end; ++k) append_line(out, steps[k]);
    i = end - 1;
  }
  return out;
}

}  // namespace tamis::cli
