#ifndef CORE_CLI_CHECK_RUN_H
#define CORE_CLI_CHECK_RUN_H

#include "core/cli/verb.h"

namespace tamis::cli {

/// `tamis check` on the paths of a request, told in the form it asks for.
Exit check_paths(const Request& request);

/// `tamis check --stream`: a fiche in JSON a line in, a record a line out, from standard input or the files named.
Exit check_lines(const Request& request);

}  // namespace tamis::cli

#endif
