#ifndef CORE_BASE_SOURCE_H
#define CORE_BASE_SOURCE_H

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tamis::base {

/// A half-open range of byte offsets into a Source.
struct Span {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  [[nodiscard]] bool empty() const { return begin == end; }
  friend bool operator==(Span, Span) = default;
};

/// Line and column as people count them: from 1; a column is one Unicode scalar value.
struct Place {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  friend bool operator==(Place, Place) = default;
};

/// The bytes of one file as read, and the name it goes by in reports. Never changed after reading: all spans of a
/// document point here. At most 64 MB (the reader sees to it), so 32-bit offsets do.
class Source {
 public:
  Source() = default;
  Source(std::string path, std::string bytes) : path_(std::move(path)), bytes_(std::move(bytes)) {}

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  [[nodiscard]] std::string_view slice(Span span) const;

  /// Lines end with LF, CRLF or CR. An offset past the end is taken as the end. The line table is built at the
  /// first question, so a file without findings never pays for it; a line of megabytes costs one pass, not one a
  /// question. Not for use from two threads at once.
  [[nodiscard]] Place place(std::uint32_t offset) const;
  /// A line's text without its ending; empty when there is no such line.
  [[nodiscard]] std::string_view line(std::uint32_t number) const;

 private:
  /// A place within a long line whose column is known.
  struct Step {
    std::uint32_t offset = 0;
    std::uint32_t column = 1;
  };

  void find_lines() const;
  [[nodiscard]] Step step_before(std::uint32_t line, std::uint32_t offset) const;

  std::string path_;
  std::string bytes_;
  mutable std::vector<std::uint32_t> line_starts_;
  mutable std::uint32_t stepped_line_ = 0;  // the long line that steps_ is of; 0: none yet
  mutable std::vector<Step> steps_;
};

}  // namespace tamis::base

#endif
