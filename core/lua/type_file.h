#ifndef CORE_LUA_TYPE_FILE_H
#define CORE_LUA_TYPE_FILE_H

#include <string>

namespace tamis::lua {

/// What a plugin sees as definitions for an editor: Lua with annotations (---@meta, ---@class, ---@field, ---@param,
/// ---@return), made from api.inc and globals.inc as the tables of plugins/README.md are. It is schemas/tamis.lua.
std::string type_file();

}  // namespace tamis::lua

#endif
