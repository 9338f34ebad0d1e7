#ifndef CORE_FORMAT_ENCODING_H
#define CORE_FORMAT_ENCODING_H

#include <optional>
#include <string_view>

#include "core/base/finding.h"

namespace tamis::format {

inline constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";  // byte order mark

/// What is wrong with a file's bytes before any reading: too large, not UTF-8 (UTF-16, Latin-1 and Windows-1252
/// are named as such), a NUL or another character that no text of ours can hold. Empty when nothing is. One quick
/// pass.
std::optional<base::Finding> refuse_bytes(std::string_view bytes);

}  // namespace tamis::format

#endif
