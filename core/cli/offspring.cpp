#include "core/cli/offspring.h"

#include <sys/wait.h>
#include <unistd.h>
#ifdef __linux__
#include <sys/prctl.h>
#endif

#include <array>
#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstring>

#include "core/base/utf8.h"

namespace tamis::cli {
namespace {

// A signal handler can reach nothing but what lives as long as the process, so this table does.
using Table = std::array<std::atomic<pid_t>, most_offspring>;
Table living;  // 0: free
static_assert(std::atomic<pid_t>::is_always_lock_free, "a signal handler may not wait for a lock");

constexpr std::array ending_signals{SIGINT, SIGTERM, SIGHUP};

/// Only what POSIX allows in a signal handler.
void end_all_and_go(int signal) {
  for (auto& one : living) {
    const pid_t process = one.exchange(0);
    if (process <= 0) continue;
    ::kill(process, SIGKILL);
    while (::waitpid(process, nullptr, 0) < 0 && errno == EINTR) {
    }
  }
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

void handle(void (*handler)(int)) {
  for (const int signal : ending_signals) {
    struct sigaction now {};
    ::sigaction(signal, nullptr, &now);
    if (now.sa_handler == SIG_IGN) continue;  // as under nohup: whoever started us wants it so
    struct sigaction wanted {};
    wanted.sa_handler = handler;
    sigfillset(&wanted.sa_mask);
    ::sigaction(signal, &wanted, nullptr);
  }
}

/// Holds the ending signals back while a process is started, so that none is missed by the table.
class Held {
 public:
  Held() {
    sigset_t set;
    sigemptyset(&set);
    for (const int signal : ending_signals) sigaddset(&set, signal);
    ::sigprocmask(SIG_BLOCK, &set, &before_);
  }
  Held(const Held&) = delete;
  Held& operator=(const Held&) = delete;
  ~Held() { release(); }
  void release() const { ::sigprocmask(SIG_SETMASK, &before_, nullptr); }

 private:
  sigset_t before_{};
};

[[noreturn]] void live(pid_t parent, const Held& held, const std::function<void()>& life) {
#ifdef __linux__
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
#endif
  if (::getppid() != parent) ::_exit(0);
  for (auto& one : living) one = 0;
  handle(SIG_DFL);
  held.release();
  life();
  ::_exit(0);
}

}  // namespace

pid_t start_offspring(const std::function<void()>& life) {
  std::atomic<pid_t>* place = nullptr;
  for (auto& one : living)
    if (one == 0 && place == nullptr) place = &one;
  if (place == nullptr) return -1;
  const Held held;
  handle(end_all_and_go);
  const pid_t parent = ::getpid();
  const pid_t process = ::fork();
  if (process == 0) live(parent, held, life);
  if (process > 0) *place = process;
  return process;
}

std::string end_offspring(pid_t process, bool kill) {
  const Held held;
  if (kill) ::kill(process, SIGKILL);
  int status = 0;
  while (::waitpid(process, &status, 0) < 0 && errno == EINTR) {
  }
  for (auto& one : living)
    if (one == process) one = 0;
  if (WIFSIGNALED(status))
    return "signal " + std::to_string(WTERMSIG(status)) + " (" + base::lower(::strsignal(WTERMSIG(status))) + ")";
  if (WEXITSTATUS(status) != 0) return "exit code " + std::to_string(WEXITSTATUS(status));
  return {};
}

}  // namespace tamis::cli
