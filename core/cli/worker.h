#ifndef CORE_CLI_WORKER_H
#define CORE_CLI_WORKER_H

#include "core/cli/task.h"

namespace tamis::cli {

/// What a worker process does with its life: takes tasks from the supervisor's socket, one after another, does each
/// and sends back what came of it. Ends when the supervisor has closed its side, or is gone.
[[noreturn]] void be_worker(int socket, const Work& work);

}  // namespace tamis::cli

#endif
