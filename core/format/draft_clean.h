#ifndef CORE_FORMAT_DRAFT_CLEAN_H
#define CORE_FORMAT_DRAFT_CLEAN_H

#include <string>

#include "core/base/result.h"
#include "core/base/source.h"

namespace tamis::format::draft {

inline constexpr std::size_t most_draft_bytes = std::size_t{1} << 20U;

/// The typed text ready to be read: characters that no XML file may hold are spaces, all else stands where it stood.
/// Refuses, with words for the author, what is no text: too long, UTF-16, Latin-1, a NUL byte, other bytes.
base::Result<std::string> clean(const base::Source& typed);

}  // namespace tamis::format::draft

#endif
