#ifndef CORE_CLI_COMPLETION_H
#define CORE_CLI_COMPLETION_H

#include <string>
#include <string_view>

namespace tamis::cli {

/// The completion script for "bash", "zsh" or "fish", made from the tables of verbs and options; empty for
/// another.
std::string completion_for(std::string_view shell);

}  // namespace tamis::cli

#endif
