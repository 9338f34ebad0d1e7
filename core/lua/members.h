#ifndef CORE_LUA_MEMBERS_H
#define CORE_LUA_MEMBERS_H

struct lua_State;

namespace tamis::lua {

// The functions behind api.inc: value_<type>.cpp holds those of a type.
#define TAMIS_FIELD(type, name, kinds, words, doc) int type##_##name(lua_State* state);
#define TAMIS_CALL(type, name, kinds, words, doc) int type##_##name(lua_State* state);
#include "core/lua/api.inc"
#undef TAMIS_FIELD
#undef TAMIS_CALL

// What operators do.
int settings_read(lua_State* state);
int value_written(lua_State* state);
int values_joined(lua_State* state);
int values_equal(lua_State* state);
int amounts_added(lua_State* state);
int amounts_subtracted(lua_State* state);
int amount_multiplied(lua_State* state);
int amount_divided(lua_State* state);
int amount_negated(lua_State* state);
int amount_is_less(lua_State* state);
int amount_is_at_most(lua_State* state);

}  // namespace tamis::lua

#endif
