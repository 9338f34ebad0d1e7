#ifndef CORE_LUA_TEXT_BUFFER_H
#define CORE_LUA_TEXT_BUFFER_H

#include <string>
#include <string_view>

struct lua_State;

namespace tamis::lua {

/// A text that a library function puts together: its bytes are counted as work, and it grows no larger than the
/// plugin's memory.
class TextBuffer {
 public:
  explicit TextBuffer(lua_State* state) : state_(state) {}
  void add(std::string_view more);
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  lua_State* state_;
  std::string text_;
};

}  // namespace tamis::lua

#endif
