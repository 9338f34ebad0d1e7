// The table functions (globals.inc): over plain lists, with raw access, every element counted.
#include <lauxlib.h>
#include <lua.h>

#include <algorithm>
#include <string>

#include "core/lua/globals.h"
#include "core/lua/meter.h"
#include "core/lua/text_buffer.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

/// The length of a list that may be written to, as it is and not as a metatable says.
lua_Integer list_length(lua_State* state, int index) {
  luaL_checktype(state, index, LUA_TTABLE);
  const int top = lua_gettop(state);
  if (luaL_getmetafield(state, index, "__metatable") == LUA_TBOOLEAN) raise(state, "this table is locked");
  lua_settop(state, top);
  const auto length = static_cast<lua_Integer>(lua_rawlen(state, index));
  // A table with holes can have any length; no list has this one.
  if (length > lua_Integer{1} << 40) raise(state, "this list is too long");
  return length;
}

/// How many lie in [first, last]; 0 when none. Spends for them, and refuses what no table holds.
std::size_t spend_for_range(lua_State* state, lua_Integer first, lua_Integer last) {
  if (first > last) return 0;
  const auto count = static_cast<std::size_t>(last) - static_cast<std::size_t>(first) + 1;
  spend(state, count == 0 ? ~std::size_t{0} : count);
  return count;
}

class Sorter {
 public:
  Sorter(lua_State* state, lua_Integer length, bool by_function) : state_(state), length_(length), by_(by_function) {}

  /// The list at 1, the function at 2, room to work in at 3. Merges runs of 1, 2, 4, ...
  void sort() {
    int from = 1;
    int to = 3;
    for (lua_Integer width = 1; width < length_; width *= 2) {
      for (lua_Integer start = 1; start <= length_; start += 2 * width) merge(from, to, start, width);
      std::swap(from, to);
    }
    if (from != 1) copy(from, 1);
  }

 private:
  void merge(int from, int to, lua_Integer start, lua_Integer width) {
    lua_Integer left = start;
    const lua_Integer left_end = std::min(start + width, length_ + 1);
    lua_Integer right = left_end;
    const lua_Integer right_end = std::min(start + 2 * width, length_ + 1);
    for (lua_Integer put = start; put < right_end; ++put) {
      spend(state_, 1);
      const bool take_right = left == left_end || (right < right_end && less(from, right, left));
      lua_rawgeti(state_, from, take_right ? right++ : left++);
      lua_rawseti(state_, to, put);
    }
  }

  bool less(int from, lua_Integer a, lua_Integer b) {
    if (by_) lua_pushvalue(state_, 2);
    lua_rawgeti(state_, from, a);
    lua_rawgeti(state_, from, b);
    bool is = false;
    if (by_) {
      lua_call(state_, 2, 1);
      is = lua_toboolean(state_, -1) != 0;
      lua_pop(state_, 1);
    } else {
      spend(state_, (lua_rawlen(state_, -2) + lua_rawlen(state_, -1)) / 8);
      is = lua_compare(state_, -2, -1, LUA_OPLT) != 0;
      lua_pop(state_, 2);
    }
    return is;
  }

  void copy(int from, int to) {
    for (lua_Integer i = 1; i <= length_; ++i) {
      lua_rawgeti(state_, from, i);
      lua_rawseti(state_, to, i);
    }
  }

  lua_State* state_;
  lua_Integer length_;
  bool by_;
};

}  // namespace

int own_table_insert(lua_State* state) {
  const int given = lua_gettop(state);
  const lua_Integer length = list_length(state, 1);
  lua_Integer at = length + 1;
  if (given == 3) {
    at = luaL_checkinteger(state, 2);
    if (at < 1 || at > length + 1) raise(state, "table.insert: position " + std::to_string(at) + " is not in the list");
    spend_for_range(state, at, length);
    for (lua_Integer i = length + 1; i > at; --i) {
      lua_rawgeti(state, 1, i - 1);
      lua_rawseti(state, 1, i);
    }
  } else if (given != 2) {
    raise(state, "table.insert takes a list, a position if wanted, and a value");
  }
  lua_pushvalue(state, given);
  lua_rawseti(state, 1, at);
  return 0;
}

int own_table_remove(lua_State* state) {
  const int given = lua_gettop(state);
  const lua_Integer length = list_length(state, 1);
  const lua_Integer at = luaL_optinteger(state, 2, length);
  if (given > 1 && length + 1 != at && (at < 1 || at > length) && !(length == 0 && at == 0))
    raise(state, "table.remove: position " + std::to_string(at) + " is not in the list");
  spend_for_range(state, at, length);
  lua_rawgeti(state, 1, at);
  for (lua_Integer i = at; i < length; ++i) {
    lua_rawgeti(state, 1, i + 1);
    lua_rawseti(state, 1, i);
  }
  lua_pushnil(state);
  lua_rawseti(state, 1, std::max(at, length));
  return 1;
}

int own_table_concat(lua_State* state) {
  const lua_Integer length = list_length(state, 1);
  const std::string_view between = string_at(state, 2, "");
  const lua_Integer first = luaL_optinteger(state, 3, 1);
  const lua_Integer last = luaL_optinteger(state, 4, length);
  spend_for_range(state, first, last);
  TextBuffer out(state);
  for (lua_Integer i = first; i <= last; ++i) {
    lua_rawgeti(state, 1, i);
    if (lua_isstring(state, -1) == 0)
      raise(state, "table.concat: item " + std::to_string(i) + " is a " + luaL_typename(state, -1) +
                       ", not a string or number");
    out.add(string_at(state, -1));
    if (i == last) break;
    out.add(between);
    lua_pop(state, 1);
  }
  push(state, out.text());
  return 1;
}

int own_table_unpack(lua_State* state) {
  constexpr std::size_t most = 100000;
  luaL_checktype(state, 1, LUA_TTABLE);
  const lua_Integer first = luaL_optinteger(state, 2, 1);
  const lua_Integer last = luaL_optinteger(state, 3, static_cast<lua_Integer>(lua_rawlen(state, 1)));
  if (first > last) return 0;
  const std::size_t count = spend_for_range(state, first, last);
  if (count > most || lua_checkstack(state, static_cast<int>(count)) == 0)
    raise(state, "table.unpack: too many results");
  for (lua_Integer i = first; i < last; ++i) lua_rawgeti(state, 1, i);
  lua_rawgeti(state, 1, last);
  return static_cast<int>(count);
}

int own_table_pack(lua_State* state) {
  const int count = lua_gettop(state);
  lua_createtable(state, count, 1);
  lua_insert(state, 1);
  for (int i = count; i >= 1; --i) lua_rawseti(state, 1, i);
  lua_pushinteger(state, count);
  lua_setfield(state, 1, "n");
  return 1;
}

int own_table_sort(lua_State* state) {
  const lua_Integer length = list_length(state, 1);
  const bool by_function = !lua_isnoneornil(state, 2);
  if (by_function) luaL_checktype(state, 2, LUA_TFUNCTION);
  lua_settop(state, 2);
  lua_newtable(state);
  Sorter(state, length, by_function).sort();
  return 0;
}

int own_table_move(lua_State* state) {
  luaL_checktype(state, 1, LUA_TTABLE);
  const lua_Integer first = luaL_checkinteger(state, 2);
  const lua_Integer last = luaL_checkinteger(state, 3);
  const lua_Integer to = luaL_checkinteger(state, 4);
  const int target = lua_isnoneornil(state, 5) ? 1 : 5;
  list_length(state, target);
  const auto count = static_cast<lua_Integer>(spend_for_range(state, first, last));
  const bool same = target == 1 || lua_rawequal(state, 1, target) != 0;
  const bool backwards = same && to > first && to <= last;
  if (count > 0 && to > LUA_MAXINTEGER - count + 1) raise(state, "table.move: past the end of what a list can hold");
  for (lua_Integer i = 0; i < count; ++i) {
    const lua_Integer step = backwards ? count - 1 - i : i;
    lua_rawgeti(state, 1, first + step);
    lua_rawseti(state, target, to + step);
  }
  lua_pushvalue(state, target);
  return 1;
}

}  // namespace tamis::lua
