#ifndef CORE_CLI_LINE_READER_H
#define CORE_CLI_LINE_READER_H

#include <cstddef>
#include <string>

namespace tamis::cli {

/// Lines of a descriptor, in memory of one line. A line ends with LF, with CR LF or with the input.
class LineReader {
 public:
  LineReader(int descriptor, std::size_t longest) : descriptor_(descriptor), longest_(longest) {}

  enum class Got : unsigned char { line, too_long, end, fault };
  /// The next line; of one that is too long nothing, and the next call goes on behind it. A fault is an errno.
  Got next(std::string& line);
  [[nodiscard]] int fault() const { return fault_; }

  /// True when the next line may have to be waited for.
  [[nodiscard]] bool must_read() const;

 private:
  bool read_more();

  int descriptor_;
  std::size_t longest_;
  std::string held_;
  std::size_t start_ = 0;   // of the next line in held_
  std::size_t looked_ = 0;  // up to where there is no line end
  bool end_ = false;
  int fault_ = 0;
};

}  // namespace tamis::cli

#endif
