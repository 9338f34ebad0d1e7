#ifndef TESTS_CHANGE_COMPARING_H
#define TESTS_CHANGE_COMPARING_H

#include <string>
#include <vector>

#include "core/change/compare.h"
#include "tests/change/converting.h"

namespace tamis::tests {

inline std::vector<change::Change> changes(const std::string& old_xml, const std::string& new_xml,
                                           const fiche::Kitchen& kitchen = {}) {
  const auto from = document_of(old_xml);
  const auto to = document_of(new_xml);
  return change::compare({*from, kitchen}, {*to, kitchen});
}

/// One line a change: "safety! text" where something was loosened, "safety: text" else.
inline std::string lines(const std::vector<change::Change>& changes) {
  std::string out;
  for (const change::Change& one : changes) {
    if (!out.empty()) out += "\n";
    out += std::string(change::topic_name(one.topic)) + (one.hold == change::Change::Hold::loosened ? "! " : ": ");
    out += with_spaces(one.text);
  }
  return out;
}

}  // namespace tamis::tests

#endif
