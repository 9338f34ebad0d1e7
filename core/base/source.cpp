#include "core/base/source.h"

#include <algorithm>

#include "core/base/utf8.h"

namespace tamis::base {
namespace {

// Bytes between two steps; lines shorter than that are counted from their start.
constexpr std::uint32_t stride = 4096;

bool starts_scalar(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

std::string_view Source::slice(Span span) const {
  const auto size = static_cast<std::uint32_t>(bytes_.size());
  const std::uint32_t begin = std::min(span.begin, size);
  const std::uint32_t end = std::clamp(span.end, begin, size);
  return std::string_view(bytes_).substr(begin, end - begin);
}

void Source::find_lines() const {
  if (!line_starts_.empty()) return;
  line_starts_.push_back(0);
  for (std::uint32_t at = 0; at < bytes_.size(); ++at) {
    const char c = bytes_[at];
    const bool crlf = c == '\r' && at + 1 < bytes_.size() && bytes_[at + 1] == '\n';
    if (c == '\n' || (c == '\r' && !crlf)) line_starts_.push_back(at + 1);
  }
}

Place Source::place(std::uint32_t offset) const {
  find_lines();
  offset = std::min(offset, static_cast<std::uint32_t>(bytes_.size()));
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const auto line = static_cast<std::uint32_t>(after - line_starts_.begin());
  const Step from = step_before(line, offset);
  const std::string_view before = std::string_view(bytes_).substr(from.offset, offset - from.offset);
  return {line, static_cast<std::uint32_t>(count_scalars(before)) + from.column};
}

Source::Step Source::step_before(std::uint32_t line, std::uint32_t offset) const {
  const std::uint32_t start = line_starts_[line - 1];
  if (offset - start < stride) return {start, 1};
  if (stepped_line_ != line) {
    const auto end = line < line_starts_.size() ? line_starts_[line] : static_cast<std::uint32_t>(bytes_.size());
    stepped_line_ = line;
    steps_ = {{start, 1}};
    for (std::uint32_t at = start; end - at > stride;) {
      std::uint32_t next = at + stride;
      while (next < end && !starts_scalar(bytes_[next])) ++next;
      const auto scalars = static_cast<std::uint32_t>(count_scalars(std::string_view(bytes_).substr(at, next - at)));
      steps_.push_back({next, steps_.back().column + scalars});
      at = next;
    }
  }
  const auto after = std::upper_bound(steps_.begin(), steps_.end(), offset,
                                      [](std::uint32_t wanted, const Step& step) { return wanted < step.offset; });
  return *(after - 1);
}

std::string_view Source::line(std::uint32_t number) const {
  find_lines();
  if (number == 0 || number > line_starts_.size()) return {};
  const std::uint32_t start = line_starts_[number - 1];
  const auto end = number < line_starts_.size() ? line_starts_[number] : static_cast<std::uint32_t>(bytes_.size());
  std::string_view text = std::string_view(bytes_).substr(start, end - start);
  while (!text.empty() && (text.back() == '\n' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

}  // namespace tamis::base
