#ifndef CORE_LUA_GLOBALS_H
#define CORE_LUA_GLOBALS_H

#include <string>
#include <string_view>
#include <vector>

struct lua_State;

namespace tamis::lua {

#define TAMIS_OWN(library, name) int own_##library##_##name(lua_State* state);
#define TAMIS_LUA(library, name)
#include "core/lua/globals.inc"
#undef TAMIS_OWN
#undef TAMIS_LUA

/// Makes the whitelist of globals.inc, with the value on top of the stack as `tamis`, and leaves the metatable that
/// makes it the globals of an environment: names that are not there raise an error. Everything else that Lua's
/// libraries bring is dropped.
void open_globals(lua_State* state);

/// A new table whose metatable is the one that open_globals made (at `metatable`), on top of the stack.
void push_environment(lua_State* state, int metatable);

/// Pushes what tostring gives: no addresses.
std::string_view push_written(lua_State* state, int index);

struct Global {
  std::string_view library;  ///< "" for names without one
  std::string_view name;
  bool own = false;
};
const std::vector<Global>& global_names();

}  // namespace tamis::lua

#endif
