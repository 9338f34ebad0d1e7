#include "core/cli/line_reader.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>

namespace tamis::cli {
namespace {

constexpr std::size_t block = std::size_t{1} << 16U;

}  // namespace

bool LineReader::must_read() const { return !end_ && held_.find('\n', looked_) == std::string::npos; }

bool LineReader::read_more() {
  if (end_) return false;
  held_.erase(0, start_);
  looked_ -= start_;
  start_ = 0;
  const std::size_t size = held_.size();
  held_.resize(size + block);
  ssize_t got = 0;
  do got = ::read(descriptor_, held_.data() + size, block);
  while (got < 0 && errno == EINTR);
  if (got < 0) fault_ = errno;
  held_.resize(size + static_cast<std::size_t>(std::max<ssize_t>(got, 0)));
  end_ = got <= 0;
  return got > 0;
}

LineReader::Got LineReader::next(std::string& line) {
  line.clear();
  bool too_long = false;
  std::size_t end = 0;
  while ((end = held_.find('\n', looked_)) == std::string::npos) {
    looked_ = held_.size();
    too_long = too_long || looked_ - start_ > longest_;
    if (too_long) start_ = looked_;
    if (!read_more()) break;
  }
  if (fault_ != 0) return Got::fault;
  const bool last = end == std::string::npos;
  if (last) end = held_.size();
  if (last && end == start_ && !too_long) return Got::end;
  too_long = too_long || end - start_ > longest_;
  if (!too_long) line = held_.substr(start_, end - start_);
  if (line.ends_with('\r')) line.pop_back();
  start_ = looked_ = last ? end : end + 1;
  return too_long ? Got::too_long : Got::line;
}

}  // namespace tamis::cli
