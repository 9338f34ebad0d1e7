#include "core/lua/globals.h"

#include <lauxlib.h>
#include <lua.h>
#include <lualib.h>

#include <algorithm>

#include "core/lua/values.h"

namespace tamis::lua {
namespace {

/// The libraries of Lua that the whitelist takes from, as they come.
constexpr struct {
  const char* name;
  lua_CFunction open;
} libraries[] = {{"base", luaopen_base}, {"math", luaopen_math}, {"string", luaopen_string}, {"table", luaopen_table},
                 {"utf8", luaopen_utf8}};

struct Row {
  const char* library;
  const char* name;
  lua_CFunction own;  // null: Lua's
};
constexpr Row rows[] = {
#define TAMIS_OWN(library, name) {#library, #name, own_##library##_##name},
#define TAMIS_LUA(library, name) {#library, #name, nullptr},
#include "core/lua/globals.inc"
#undef TAMIS_OWN
#undef TAMIS_LUA
};

int refuse_write(lua_State* state) { return luaL_error(state, "this is shared and cannot be written to"); }

/// Reading what is not there: upvalue 1 is the list of names as a table, 2 how to call the place.
int no_such_name(lua_State* state) {
  std::vector<std::string_view> names;
  lua_pushnil(state);
  while (lua_next(state, lua_upvalueindex(1)) != 0) {
    if (lua_type(state, -2) == LUA_TSTRING) names.push_back(string_at(state, -2));
    lua_pop(state, 1);
  }
  std::sort(names.begin(), names.end());
  const std::string typed = lua_type(state, 2) == LUA_TSTRING ? std::string(string_at(state, 2)) : "?";
  no_such(state, lua_tostring(state, lua_upvalueindex(2)), typed, names);
}

/// Puts a metatable on a new table: reads come from the table at `source`, unknown names and writes raise.
void push_front(lua_State* state, int source, const char* what) {
  source = lua_absindex(state, source);
  lua_newtable(state);
  lua_newtable(state);
  // The names behind: a table of their own kind that only raises, for what the source has not.
  lua_newtable(state);
  lua_pushvalue(state, source);
  lua_pushstring(state, what);
  lua_pushcclosure(state, no_such_name, 2);
  lua_setfield(state, -2, "__index");
  lua_setmetatable(state, source);
  lua_pushvalue(state, source);
  lua_setfield(state, -2, "__index");
  lua_pushcfunction(state, refuse_write);
  lua_setfield(state, -2, "__newindex");
  lua_pushboolean(state, 0);
  lua_setfield(state, -2, "__metatable");
  lua_setmetatable(state, -2);
}

void push_library(lua_State* state, const char* wanted, lua_CFunction opener) {
  lua_pushcfunction(state, opener);
  lua_call(state, 0, 1);
  lua_newtable(state);
  for (const Row& row : rows) {
    if (std::string_view(row.library) != wanted) continue;
    if (row.own != nullptr)
      lua_pushcfunction(state, row.own);
    else
      lua_getfield(state, -2, row.name);
    lua_setfield(state, -2, row.name);
  }
  lua_remove(state, -2);
}

/// Methods of strings are those of the whitelist.
void lock_strings(lua_State* state, int library) {
  library = lua_absindex(state, library);
  lua_pushliteral(state, "");
  lua_getmetatable(state, -1);
  lua_pushvalue(state, library);
  lua_setfield(state, -2, "__index");
  lua_pushboolean(state, 0);
  lua_setfield(state, -2, "__metatable");
  lua_pop(state, 2);
}

void drop_everything_else(lua_State* state) {
  lua_newtable(state);
  lua_rawseti(state, LUA_REGISTRYINDEX, LUA_RIDX_GLOBALS);
  lua_pushnil(state);
  lua_setfield(state, LUA_REGISTRYINDEX, LUA_LOADED_TABLE);
}

}  // namespace

void open_globals(lua_State* state) {
  const int tamis = lua_gettop(state);
  push_library(state, "base", luaopen_base);
  const int globals = lua_gettop(state);
  for (const auto& library : libraries) {
    const std::string_view name = library.name;
    if (name == "base") continue;
    push_library(state, library.name, library.open);
    if (name == "string") lock_strings(state, -1);
    push_front(state, -1, ("there is no name in " + std::string(name)).c_str());
    lua_setfield(state, globals, library.name);
    lua_pop(state, 1);
  }
  lua_pushvalue(state, tamis);
  lua_setfield(state, globals, "tamis");
  drop_everything_else(state);
  push_front(state, globals, "there is no global");
  // Of an environment only the metatable is wanted, with room to write in the environment itself.
  lua_getmetatable(state, -1);
  lua_pushnil(state);
  lua_setfield(state, -2, "__newindex");
  lua_replace(state, tamis);
  lua_settop(state, tamis);
}

void push_environment(lua_State* state, int metatable) {
  metatable = lua_absindex(state, metatable);
  lua_createtable(state, 0, 16);
  lua_pushvalue(state, metatable);
  lua_setmetatable(state, -2);
}

const std::vector<Global>& global_names() {
  static const std::vector<Global> names = [] {
    std::vector<Global> made;
    for (const Row& row : rows) {
      const std::string_view library = row.library;
      made.push_back({library == "base" ? std::string_view() : library, row.name, row.own != nullptr});
    }
    return made;
  }();
  return names;
}

}  // namespace tamis::lua
