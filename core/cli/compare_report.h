#ifndef CORE_CLI_COMPARE_REPORT_H
#define CORE_CLI_COMPARE_REPORT_H

#include <string>
#include <vector>

#include "core/base/source.h"
#include "core/change/compare.h"
#include "core/fiche/document.h"

namespace tamis::cli {

/// Two fiches and what differs.
struct Comparison {
  const fiche::Document& from;
  const fiche::Document& to;
  std::vector<change::Change> changes;
};

/// Lines for people: which fiches, then the changes under the headings of their topics, each with its line in the new
/// file; "was line 12" where it is only in the old one.
std::string comparison_text(const Comparison& comparison, bool colour);

/// One JSON document (schemas/compare.schema.json).
std::string comparison_json(const Comparison& comparison);

/// "7 changes: 1 in food safety, 4 in figures, 2 in wording"; "nothing changed" when there are none.
std::string comparison_count(const Comparison& comparison);

}  // namespace tamis::cli

#endif
