#ifndef CORE_CLI_EXCERPT_H
#define CORE_CLI_EXCERPT_H

#include <cstddef>
#include <string>

#include "core/base/source.h"

namespace tamis::cli {

/// A line of a source and the mark under a part of it, both for a terminal.
struct Excerpt {
  std::string line;        ///< without indentation, tabs as spaces, control characters as U+FFFD
  std::size_t before = 0;  ///< terminal columns before the mark
  std::size_t marked = 1;  ///< terminal columns of the mark, at least one
};

/// The line in which the span begins, cut around the span with "…" where it does not fit in `columns`. A span that
/// goes on to further lines is marked to the end of its first. Reads no more of the line than it shows, so that a
/// file of one endless line costs nothing.
Excerpt excerpt(const base::Source& source, base::Span where, std::size_t columns);

}  // namespace tamis::cli

#endif
