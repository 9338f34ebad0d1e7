#ifndef CORE_LUA_LETTERS_H
#define CORE_LUA_LETTERS_H

#include <string>
#include <string_view>

namespace tamis::lua {

/// Capitals of ASCII and of Latin-1 and Latin Extended-A letters: what base::lower turns small. Other text stays.
std::string upper(std::string_view text);

}  // namespace tamis::lua

#endif
