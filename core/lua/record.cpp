#include "core/lua/record.h"

#include <lua.h>

#include "core/lua/values.h"

namespace tamis::lua {

Record::Record(lua_State* state) : state_(state) { lua_createtable(state, 0, 8); }

void Record::text(const std::string& name, std::string_view value) {
  push(state_, value);
  lua_setfield(state_, -2, name.c_str());
}

void Record::number(const std::string& name, std::optional<double> value) {
  if (!value) return;
  lua_pushnumber(state_, *value);
  lua_setfield(state_, -2, name.c_str());
}

void Record::flag(const std::string& name, bool value) {
  lua_pushboolean(state_, value ? 1 : 0);
  lua_setfield(state_, -2, name.c_str());
}

void Record::set(const char* name) { lua_setfield(state_, -2, name); }

}  // namespace tamis::lua
