#ifndef CORE_CLI_PLUGIN_TESTS_H
#define CORE_CLI_PLUGIN_TESTS_H

#include "core/cli/verb.h"

namespace tamis::cli {

/// `tamis plugins test [--renew] PATH...`: each path is a plugin's folder, or one with plugins in the folders below it. Every test
/// is done in a worker process. Good when all is as expected, found when something is not, failed when a path is no
/// plugin or a plugin cannot be loaded.
Exit test_plugins(const Request& request);

}  // namespace tamis::cli

#endif
