#include "core/base/finding.h"

#include <algorithm>

namespace tamis::base {

std::string_view severity_name(Severity severity) {
  switch (severity) {
    case Severity::off: return "off";
    case Severity::advice: return "advice";
    case Severity::warning: return "warning";
    case Severity::error: return "error";
  }
  return "error";
}

void sort_by_place(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.where.begin < b.where.begin; });
}

}  // namespace tamis::base
