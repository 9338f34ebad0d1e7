#ifndef CORE_CLI_DIFF_H
#define CORE_CLI_DIFF_H

#include <string>
#include <string_view>

namespace tamis::cli {

/// What turns `before` into `after`, as a unified diff with three lines of context that patch(1) applies to `path`
/// (POSIX.1-2008, diff -u). Empty when the two are the same.
std::string unified_diff(std::string_view path, std::string_view before, std::string_view after);

}  // namespace tamis::cli

#endif
