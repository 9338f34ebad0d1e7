#ifndef CORE_CLI_PROGRESS_H
#define CORE_CLI_PROGRESS_H

#include <chrono>
#include <cstddef>
#include <functional>
#include <string>

namespace tamis::cli {

/// How far long work has come, on the terminal only: "1200 of 30000 files", from about half a second on, a few times a
/// second, gone at the end.
class Progress {
 public:
  /// `count_all` is asked once, when there is first something to show: how many there will be, 0 when nobody knows.
  Progress(std::string what, std::function<std::size_t()> count_all);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();
  void step();

 private:
  using Clock = std::chrono::steady_clock;
  std::string what_;
  std::function<std::size_t()> count_all_;
  bool terminal_;
  Clock::time_point next_;
  std::size_t done_ = 0;
  std::size_t all_ = 0;
};

}  // namespace tamis::cli

#endif
