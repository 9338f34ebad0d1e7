#ifndef CORE_CLI_HELP_H
#define CORE_CLI_HELP_H

#include <string>

#include "core/cli/verb.h"

namespace tamis::cli {

/// What "tamis --help" prints: what it is for, where to begin, the verbs.
std::string general_help();

/// What "tamis VERB --help" prints, from the verb's own table.
std::string verb_help(const Verb& verb);

/// "tamis 0.1.0"
std::string version_line();

}  // namespace tamis::cli

#endif
