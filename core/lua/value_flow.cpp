// Things and takings: the flow of a recipe (api.inc, core/flow/flow.h).
#include <lua.h>

#include <array>

#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

const flow::Thing& thing_at(lua_State* state) {
  const IndexValue& value = indexed_at(state, 1, Type::thing);
  return value.opened->flow().things[static_cast<std::size_t>(value.index)];
}

const flow::Use& taking_at(lua_State* state) {
  const IndexValue& value = indexed_at(state, 1, Type::taking);
  return value.opened->flow().uses[static_cast<std::size_t>(value.index)];
}

Opened& opened_at(lua_State* state) { return *static_cast<IndexValue*>(lua_touserdata(state, 1))->opened; }

void push_step(lua_State* state, Opened& opened, int step) {
  push_element(state, opened, step < 0 ? fiche::none : opened.flow().steps[static_cast<std::size_t>(step)].node);
}

}  // namespace

int thing_kind(lua_State* state) {
  constexpr std::array<std::string_view, 4> kinds{"ingredient", "part", "result", "component"};
  push(state, kinds[static_cast<std::size_t>(thing_at(state).kind)]);
  return 1;
}

int thing_id(lua_State* state) {
  push(state, thing_at(state).id);
  return 1;
}

int thing_label(lua_State* state) {
  push(state, thing_at(state).name);
  return 1;
}

int thing_element(lua_State* state) {
  push_element(state, opened_at(state), thing_at(state).node);
  return 1;
}

int thing_maker(lua_State* state) {
  push_step(state, opened_at(state), thing_at(state).maker);
  return 1;
}

int thing_counts(lua_State* state) {
  lua_pushboolean(state, thing_at(state).counts ? 1 : 0);
  return 1;
}

int thing_mass(lua_State* state) {
  push_mass(state, thing_at(state).grams);
  return 1;
}

int thing_takings(lua_State* state) {
  Opened& opened = opened_at(state);
  return push_list(state, thing_at(state).uses, [&](int use) { push_indexed(state, Type::taking, opened, use); });
}

int taking_thing(lua_State* state) {
  push_indexed(state, Type::thing, opened_at(state), taking_at(state).thing);
  return 1;
}

int taking_step(lua_State* state) {
  push_step(state, opened_at(state), taking_at(state).step);
  return 1;
}

int taking_element(lua_State* state) {
  push_element(state, opened_at(state), taking_at(state).mark);
  return 1;
}

int taking_take(lua_State* state) {
  constexpr std::array<std::string_view, 5> ways{"all", "share", "amount", "rest", "unstated"};
  push(state, ways[static_cast<std::size_t>(taking_at(state).take)]);
  return 1;
}

int taking_share(lua_State* state) {
  const flow::Use& use = taking_at(state);
  if (use.share)
    lua_pushnumber(state, use.share->approximate());
  else
    lua_pushnil(state);
  return 1;
}

int taking_mass(lua_State* state) {
  push_mass(state, taking_at(state).grams);
  return 1;
}

}  // namespace tamis::lua
