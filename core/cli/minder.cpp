#include "core/cli/minder.h"

#include <sys/mman.h>
#include <sys/resource.h>

#include <algorithm>
#include <cstring>

namespace tamis::cli {
namespace {

using std::chrono::steady_clock;

constexpr std::chrono::seconds grace{1};  // for what the host does around the plugin

#if defined(__SANITIZE_ADDRESS__)
constexpr bool may_limit_memory = false;  // the sanitizer's own maps are larger than any limit
#elif defined(__has_feature)
constexpr bool may_limit_memory = !__has_feature(address_sanitizer);
#else
constexpr bool may_limit_memory = true;
#endif

void limit(int resource, rlim_t most) {
  rlimit now{};
  if (::getrlimit(static_cast<__rlimit_resource_t>(resource), &now) != 0) return;
  now.rlim_cur = std::min(most, now.rlim_max);
  ::setrlimit(static_cast<__rlimit_resource_t>(resource), &now);
}

}  // namespace

Minder::Minder() {
  void* page = ::mmap(nullptr, sizeof(Page), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  if (page != MAP_FAILED) page_ = new (page) Page{};
}

Minder::~Minder() {
  if (page_ != nullptr) ::munmap(page_, sizeof(Page));
}

void Minder::mind() {
  limit(RLIMIT_CORE, 0);
  if (may_limit_memory) limit(RLIMIT_AS, rlim_t{4} << 30U);
  lua::set_watcher(this);
}

void Minder::starts(std::string_view plugin, std::chrono::seconds time) {
  if (page_ == nullptr) return;
  const std::size_t size = std::min(plugin.size(), sizeof page_->plugin - 1);
  std::memcpy(page_->plugin, plugin.data(), size);
  page_->plugin[size] = '\0';
  page_->seconds = time.count();
  page_->until = (steady_clock::now() + time + grace).time_since_epoch() / std::chrono::nanoseconds(1);
  // Behind the supervisor's clock, for when it is gone or held up itself: whole seconds of the processor.
  rusage used{};
  if (::getrusage(RUSAGE_SELF, &used) != 0) return;
  limit(RLIMIT_CPU, static_cast<rlim_t>(used.ru_utime.tv_sec + used.ru_stime.tv_sec + 5 + time.count()));
}

void Minder::ends() {
  if (page_ == nullptr) return;
  page_->until = 0;
  limit(RLIMIT_CPU, RLIM_INFINITY);
}

std::string Minder::plugin() const {
  if (page_ == nullptr || page_->until == 0) return {};
  return {page_->plugin, ::strnlen(page_->plugin, sizeof page_->plugin)};
}

bool Minder::overdue() const {
  if (page_ == nullptr) return false;
  const std::int64_t until = page_->until;
  return until != 0 && steady_clock::now().time_since_epoch() / std::chrono::nanoseconds(1) > until;
}

std::chrono::seconds Minder::time() const { return std::chrono::seconds(page_ == nullptr ? 0 : page_->seconds); }

}  // namespace tamis::cli
