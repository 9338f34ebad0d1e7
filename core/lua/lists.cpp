#include "core/lua/lists.h"

#include <lua.h>

#include "core/lua/meter.h"

namespace tamis::lua {

ListMaker::ListMaker(lua_State* state, std::size_t expected) : state_(state) {
  spend(state, expected);
  lua_createtable(state, static_cast<int>(expected), 0);
}

void ListMaker::add() { lua_rawseti(state_, -2, ++size_); }

}  // namespace tamis::lua
