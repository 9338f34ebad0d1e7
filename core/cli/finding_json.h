#ifndef CORE_CLI_FINDING_JSON_H
#define CORE_CLI_FINDING_JSON_H

#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"

namespace tamis::cli {

/// Findings as schemas/report.schema.json has them, in an array; `between` stands behind each comma.
void append_findings(std::string& out, const base::Source& source, const std::vector<base::Finding>& findings,
                     std::string_view between);

}  // namespace tamis::cli

#endif
