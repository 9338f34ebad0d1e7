#ifndef CORE_LUA_RECORD_H
#define CORE_LUA_RECORD_H

#include <optional>
#include <string>
#include <string_view>

struct lua_State;

namespace tamis::lua {

/// A Lua table with named fields under way, on top of the stack.
class Record {
 public:
  explicit Record(lua_State* state);
  void text(const std::string& name, std::string_view value);
  void number(const std::string& name, std::optional<double> value);  ///< left out when empty
  void flag(const std::string& name, bool value);
  void set(const char* name);  ///< takes what was pushed on top

 private:
  lua_State* state_;
};

}  // namespace tamis::lua

#endif
