#include "core/cli/finding_lines.h"

#include <algorithm>

namespace tamis::cli {
namespace {

std::string one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

std::string spelled(base::Place place) { return std::to_string(place.line) + ":" + std::to_string(place.column); }

}  // namespace

std::string finding_lines(const base::Source& source, std::vector<base::Finding> findings, const std::string& file) {
  if (findings.empty()) return "nothing\n";
  base::sort_by_place(findings);
  std::string out;
  for (const base::Finding& finding : findings) {
    out += file + spelled(source.place(finding.where.begin)) + " " + std::string(base::severity_name(finding.severity)) + " " +
           finding.rule + ": " + one_line(finding.message) + "\n";
    if (!finding.advice.empty()) out += "  → " + one_line(finding.advice) + "\n";
    for (const base::Related& also : finding.related) {
      const base::Place place = also.path.empty() ? source.place(also.where.begin) : also.place;
      out += "  also " + (also.path.empty() ? "" : also.path + ":") + spelled(place) + ": " + one_line(also.message) + "\n";
    }
    for (const base::Edit& edit : finding.edits)
      out += "  mend " + spelled(source.place(edit.where.begin)) + "-" + spelled(source.place(edit.where.end)) + ": " +
             one_line(edit.text) + "\n";
  }
  return out;
}

}  // namespace tamis::cli
