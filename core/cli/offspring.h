#ifndef CORE_CLI_OFFSPRING_H
#define CORE_CLI_OFFSPRING_H

#include <sys/types.h>

#include <functional>
#include <string>

namespace tamis::cli {

/// Worker processes that end with us, however we end: by our own doing, by Ctrl-C, hang-up or a request to end (they
/// are killed and reaped before we go), and by force (the kernel ends them, where it can).

/// The most there may be at a time.
inline constexpr unsigned most_offspring = 256;

/// Starts a process that does `life`; -1 when the system gives none.
pid_t start_offspring(const std::function<void()>& life);

/// Waits for the end of one of them, after killing it when `kill` is set, and says how it ended: "signal 11
/// (segmentation fault)", "exit code 3"; "" when it ended well.
std::string end_offspring(pid_t process, bool kill);

}  // namespace tamis::cli

#endif
