#ifndef CORE_LUA_LISTS_H
#define CORE_LUA_LISTS_H

#include <cstddef>

struct lua_State;

namespace tamis::lua {

/// A Lua list under way, on top of the stack: push a value, then add().
class ListMaker {
 public:
  explicit ListMaker(lua_State* state, std::size_t expected = 0);
  void add();

 private:
  lua_State* state_;
  long long size_ = 0;
};

/// Pushes a Lua list; `push_one` pushes each item. For `return push_list(...)`.
template <class List, class Push>
int push_list(lua_State* state, const List& list, Push push_one) {
  ListMaker made(state, list.size());
  for (const auto& item : list) {
    push_one(item);
    made.add();
  }
  return 1;
}

}  // namespace tamis::lua

#endif
