#include "core/base/source.h"

#include <algorithm>

#include "core/base/utf8.h"

namespace tamis::base {

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
  const std::uint32_t start = line_starts_[line - 1];
  const std::string_view before = std::string_view(bytes_).substr(start, offset - start);
  return {line, static_cast<std::uint32_t>(count_scalars(before)) + 1};
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
