#ifndef CORE_CLI_SPOOL_H
#define CORE_CLI_SPOOL_H

#include <cstddef>
#include <cstdio>
#include <memory>
#include <string>
#include <string_view>

namespace tamis::cli {

/// Text that must wait until the end of a report: what goes over some hundred kilobytes waits in a temporary file
/// that has no name, so that a report on a hundred thousand files keeps none of them in memory.
class Spool {
 public:
  void add(std::string_view text);
  [[nodiscard]] bool empty() const { return held_.empty() && written_ == 0; }
  /// Prints all that was added, in order.
  void print_out();

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  void write_through();

  std::string held_;
  std::unique_ptr<std::FILE, Close> file_;
  std::size_t written_ = 0;
  bool no_file_ = false;  // there is no room for a temporary file: what comes is held
};

}  // namespace tamis::cli

#endif
