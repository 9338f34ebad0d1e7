#ifndef CORE_BASE_FINDING_H
#define CORE_BASE_FINDING_H

#include <string>
#include <string_view>
#include <vector>

#include "core/base/source.h"

namespace tamis::base {

enum class Severity : unsigned char { off, advice, warning, error };

std::string_view severity_name(Severity severity);  // "off", "advice", "warning", "error"

/// Another place that belongs to a finding. `path` is empty for the file the finding is in; for a place in another
/// file, `place` and `end` are filled where that file's bytes were at hand.
struct Related {
  Span where;
  std::string message;
  std::string path;
  Place place;
  Place end;
};

/// A sure fix: these bytes of the source become this text. The text is already spelled for the file it goes into
/// (escaped for XML or JSON).
struct Edit {
  Span where;
  std::string text;
};

/// One thing there is to say about a file: what is wrong, where, and what to do. Also what a call gives that could
/// not do its work (see Result).
///
/// Words: `message` starts in lower case, has no final stop, says what was found with its figure and what was
/// expected; `advice` is what to do, in the same form; `source` is where the figure or rule comes from.
struct Finding {
  std::string rule;
  Severity severity = Severity::error;
  Span where;
  std::string message;
  std::string advice;
  std::string source;
  std::vector<Related> related;
  std::vector<Edit> edits;
};

/// Findings in the order they stand in the file; those at one place keep the order they were made in.
void sort_by_place(std::vector<Finding>& findings);

}  // namespace tamis::base

#endif
