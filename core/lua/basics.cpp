// The globals without a library that are written here (globals.inc).
#include <lauxlib.h>
#include <lua.h>

#include <algorithm>
#include <string>
#include <vector>

#include "core/lua/globals.h"
#include "core/lua/meter.h"
#include "core/lua/session.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

constexpr std::size_t most_talk = std::size_t{64} << 10U;

/// What may stand in a metatable: __gc and __close would run after the budget is spent, __metatable is ours.
constexpr const char* events[] = {"__index", "__newindex", "__call", "__tostring", "__name", "__eq",  "__lt",
                                  "__le",    "__len",      "__concat", "__unm",    "__add",  "__sub", "__mul",
                                  "__div",   "__mod",      "__pow",  "__idiv",     "__band", "__bor", "__bxor",
                                  "__shl",   "__shr",      "__bnot"};

const char metatables_kept = 0;  // its address is the key of the table of copies in the registry

/// A key that has an order.
struct Key {
  int rank = 0;  // numbers, strings, booleans
  double number = 0;
  bool whole = false;
  lua_Integer integer = 0;
  std::string_view text;
};

bool before(const Key& a, const Key& b) {
  if (a.rank != b.rank) return a.rank < b.rank;
  if (a.rank == 1) return a.text < b.text;
  if (a.rank == 0 && a.whole && b.whole) return a.integer < b.integer;
  return a.number < b.number;
}

Key key_at(lua_State* state, int index) {
  Key key;
  switch (lua_type(state, index)) {
    case LUA_TNUMBER:
      key.whole = lua_isinteger(state, index) != 0;
      key.integer = lua_tointeger(state, index);
      key.number = lua_tonumber(state, index);
      return key;
    case LUA_TSTRING:
      key.rank = 1;
      key.text = string_at(state, index);
      return key;
    case LUA_TBOOLEAN:
      key.rank = 2;
      key.number = lua_toboolean(state, index);
      return key;
    default:
      raise(state, "keys that are a " + std::string(luaL_typename(state, index)) +
                       " have no order to walk in; keep them in a list");
  }
}

std::vector<Key> sorted_keys(lua_State* state, int table) {
  std::vector<Key> keys;
  lua_pushnil(state);
  while (lua_next(state, table) != 0) {
    lua_pop(state, 1);
    keys.push_back(key_at(state, -1));
    spend(state, 4 + keys.back().text.size() / 8);
  }
  std::sort(keys.begin(), keys.end(), before);
  return keys;
}

void push_key(lua_State* state, const Key& key) {
  if (key.rank == 1)
    push(state, key.text);
  else if (key.rank == 2)
    lua_pushboolean(state, key.number > 0 ? 1 : 0);
  else if (key.whole)
    lua_pushinteger(state, key.integer);
  else
    lua_pushnumber(state, key.number);
}

/// Upvalues: the table, its keys in order, how far it has come.
int next_pair(lua_State* state) {
  lua_Integer at = lua_tointeger(state, lua_upvalueindex(3));
  for (;;) {
    ++at;
    lua_pushinteger(state, at);
    lua_replace(state, lua_upvalueindex(3));
    if (lua_rawgeti(state, lua_upvalueindex(2), at) == LUA_TNIL) return 1;
    lua_pushvalue(state, -1);
    if (lua_rawget(state, lua_upvalueindex(1)) != LUA_TNIL) return 2;
    lua_settop(state, 0);
  }
}

void check_walkable(lua_State* state) {
  if (lua_isuserdata(state, 1) != 0)
    raise(state, "pairs walks tables; ask this value for a list (plugins/README.md)");
  luaL_checktype(state, 1, LUA_TTABLE);
}

/// Errors that no plugin may hold up.
void pass_on_what_must_end(lua_State* state, int status) {
  Meter& meter = meter_of(state);
  if (status != LUA_OK && status != LUA_ERRRUN) meter.note_memory_error();
  if (meter.spent() || meter.out_of_memory()) lua_error(state);
}

/// The copy of a plugin's metatable that a table really gets; kept with it, so that it is made once.
void push_copy(lua_State* state, int original) {
  lua_rawgetp(state, LUA_REGISTRYINDEX, &metatables_kept);
  if (lua_isnil(state, -1)) {
    lua_pop(state, 1);
    lua_newtable(state);
    lua_newtable(state);
    lua_pushliteral(state, "k");
    lua_setfield(state, -2, "__mode");
    lua_setmetatable(state, -2);
    lua_pushvalue(state, -1);
    lua_rawsetp(state, LUA_REGISTRYINDEX, &metatables_kept);
  }
  lua_pushvalue(state, original);
  if (lua_rawget(state, -2) == LUA_TNIL) {
    lua_pop(state, 1);
    lua_newtable(state);
    lua_pushvalue(state, original);
    lua_pushvalue(state, -2);
    lua_rawset(state, -4);
  }
  lua_remove(state, -2);
}

}  // namespace

std::string_view push_written(lua_State* state, int index) {
  index = lua_absindex(state, index);
  switch (lua_type(state, index)) {
    case LUA_TNIL: push(state, "nil"); break;
    case LUA_TBOOLEAN: push(state, lua_toboolean(state, index) != 0 ? "true" : "false"); break;
    case LUA_TNUMBER:
    case LUA_TSTRING:
      lua_pushvalue(state, index);
      (void)lua_tolstring(state, -1, nullptr);
      break;
    default:
      if (luaL_callmeta(state, index, "__tostring") != 0) {
        if (lua_type(state, -1) != LUA_TSTRING) raise(state, "__tostring must give a string");
      } else {
        push(state, luaL_typename(state, index));
      }
  }
  return string_at(state, -1);
}

int own_base_tostring(lua_State* state) {
  luaL_checkany(state, 1);
  push_written(state, 1);
  return 1;
}

int own_base_print(lua_State* state) {
  std::string& talk = session_of(state).talk;
  const int count = lua_gettop(state);
  for (int i = 1; i <= count; ++i) {
    const std::string_view words = push_written(state, i);
    spend(state, words.size() / 8);
    if (talk.size() < most_talk) talk.append(i > 1 ? "\t" : "").append(words.substr(0, most_talk));
    lua_pop(state, 1);
  }
  if (talk.size() < most_talk) talk += '\n';
  return 0;
}

int own_base_pairs(lua_State* state) {
  check_walkable(state);
  lua_settop(state, 1);
  const std::vector<Key> keys = sorted_keys(state, 1);
  lua_pushvalue(state, 1);
  lua_createtable(state, static_cast<int>(keys.size()), 0);
  for (std::size_t i = 0; i < keys.size(); ++i) {
    push_key(state, keys[i]);
    lua_rawseti(state, -2, static_cast<lua_Integer>(i) + 1);
  }
  lua_pushinteger(state, 0);
  lua_pushcclosure(state, next_pair, 3);
  return 1;
}

int own_base_next(lua_State* state) {
  check_walkable(state);
  if (!lua_isnoneornil(state, 2)) raise(state, "next gives the first pair of a table only; pairs walks it");
  lua_settop(state, 1);
  const std::vector<Key> keys = sorted_keys(state, 1);
  if (keys.empty()) {
    lua_pushnil(state);
    return 1;
  }
  push_key(state, keys.front());
  lua_pushvalue(state, -1);
  lua_rawget(state, 1);
  return 2;
}

int own_base_pcall(lua_State* state) {
  luaL_checkany(state, 1);
  const int status = lua_pcall(state, lua_gettop(state) - 1, LUA_MULTRET, 0);
  pass_on_what_must_end(state, status);
  lua_pushboolean(state, status == LUA_OK ? 1 : 0);
  lua_insert(state, 1);
  return lua_gettop(state);
}

int own_base_xpcall(lua_State* state) {
  luaL_checktype(state, 2, LUA_TFUNCTION);
  lua_pushvalue(state, 2);
  lua_remove(state, 2);
  lua_insert(state, 1);  // handler, function, arguments
  const int status = lua_pcall(state, lua_gettop(state) - 2, LUA_MULTRET, 0);
  pass_on_what_must_end(state, status);
  if (status != LUA_OK) {
    lua_call(state, 1, LUA_MULTRET);
    lua_pushboolean(state, 0);
    lua_insert(state, 1);
    return lua_gettop(state);
  }
  lua_pushboolean(state, 1);
  lua_replace(state, 1);
  return lua_gettop(state);
}

int own_base_setmetatable(lua_State* state) {
  luaL_checktype(state, 1, LUA_TTABLE);
  if (!lua_isnil(state, 2)) luaL_checktype(state, 2, LUA_TTABLE);
  lua_settop(state, 2);
  if (luaL_getmetafield(state, 1, "__metatable") == LUA_TBOOLEAN) raise(state, "this table is locked");
  lua_settop(state, 2);
  if (lua_isnil(state, 2)) {
    lua_setmetatable(state, 1);
    return 1;
  }
  for (const char* forbidden : {"__gc", "__close", "__mode"}) {
    lua_pushstring(state, forbidden);
    if (lua_rawget(state, 2) != LUA_TNIL) raise(state, std::string(forbidden) + " is not there for plugins");
    lua_pop(state, 1);
  }
  push_copy(state, 2);
  for (const char* event : events) {
    lua_pushstring(state, event);
    lua_rawget(state, 2);
    lua_setfield(state, 3, event);
  }
  lua_pushvalue(state, 2);
  lua_setfield(state, 3, "__metatable");
  lua_setmetatable(state, 1);
  lua_settop(state, 1);
  return 1;
}

int own_base_getmetatable(lua_State* state) {
  luaL_checkany(state, 1);
  if (lua_type(state, 1) != LUA_TTABLE || luaL_getmetafield(state, 1, "__metatable") != LUA_TTABLE)
    lua_pushnil(state);
  return 1;
}

}  // namespace tamis::lua
