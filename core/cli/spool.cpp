#include "core/cli/spool.h"

#include <algorithm>
#include <vector>

#include "core/cli/output.h"

namespace tamis::cli {
namespace {

constexpr std::size_t most_held = std::size_t{256} << 10U;

}  // namespace

void Spool::add(std::string_view text) {
  held_ += text;
  if (held_.size() > most_held && !no_file_) write_through();
}

void Spool::write_through() {
  if (file_ == nullptr) file_.reset(std::tmpfile());
  if (file_ == nullptr) {
    no_file_ = true;
    return;
  }
  const std::size_t done = std::fwrite(held_.data(), 1, held_.size(), file_.get());
  const bool flushed = std::fflush(file_.get()) == 0;
  no_file_ = done < held_.size() || !flushed;
  if (no_file_) return;  // counted are only bytes that are surely there
  written_ += held_.size();
  held_.clear();
}

void Spool::print_out() {
  if (file_ != nullptr && std::fseek(file_.get(), 0, SEEK_SET) == 0) {
    std::vector<char> block(std::size_t{1} << 16U);
    for (std::size_t left = written_; left > 0;) {
      const std::size_t got = std::fread(block.data(), 1, std::min(left, block.size()), file_.get());
      if (got == 0) break;
      print({block.data(), got});
      left -= got;
    }
  }
  print(held_);
}

}  // namespace tamis::cli
