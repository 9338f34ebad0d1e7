#include "core/cli/progress.h"

#include <utility>

#include "core/cli/output.h"
#include "core/cli/report.h"

namespace tamis::cli {
namespace {

constexpr std::chrono::milliseconds before_the_first{500};
constexpr std::chrono::milliseconds between{150};

}  // namespace

Progress::Progress(std::string what, std::function<std::size_t()> count_all)
    : what_(std::move(what)),
      count_all_(std::move(count_all)),
      terminal_(talk_is_terminal()),
      next_(Clock::now() + before_the_first) {}

Progress::~Progress() { clear_passing(); }

void Progress::step() {
  ++done_;
  if (!terminal_ || Clock::now() < next_) return;
  if (count_all_) all_ = std::exchange(count_all_, nullptr)();
  show_passing((all_ < done_ ? "" : std::to_string(done_) + " of ") + count_of(all_ < done_ ? done_ : all_, what_));
  next_ = Clock::now() + between;
}

}  // namespace tamis::cli
