#ifndef CORE_LUA_RESULTS_H
#define CORE_LUA_RESULTS_H

#include <vector>

#include "core/lua/engine.h"

namespace tamis::lua {

inline constexpr std::size_t most_files = 100;
inline constexpr std::size_t most_file_bytes = std::size_t{32} << 20U;  ///< all of them together

/// What an export gave back, on top of the stack: a string, or a list of {name, bytes}. Read with raw access; raises
/// for anything else, for a name that is no plain file name, and past the limits.
void read_files(lua_State* state, std::vector<MadeFile>& made);

}  // namespace tamis::lua

#endif
