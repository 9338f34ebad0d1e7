#ifndef CORE_CLI_FINDING_LINES_H
#define CORE_CLI_FINDING_LINES_H

#include <string>
#include <vector>

#include "core/base/finding.h"

namespace tamis::cli {

/// Findings as a plugin's tests expect them (plugins/README.md), in file order:
///   3:23 warning depth-not-stated: the frame has no fill height
///     → add fill="3 cm"
///     also 2:3: this is the title        (of another file: also base.fiche.xml:2:3: ...)
///     mend 3:23-3:30: 3 cm
/// "nothing" where there are none. Ends with a line feed; a line feed within a text becomes a space. `file` stands before
/// the place of a finding in another file than the first: "together/b.fiche.xml:".
std::string finding_lines(const base::Source& source, std::vector<base::Finding> findings, const std::string& file = {});

}  // namespace tamis::cli

#endif
