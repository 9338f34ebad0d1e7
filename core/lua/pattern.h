#ifndef CORE_LUA_PATTERN_H
#define CORE_LUA_PATTERN_H

#include <array>
#include <cstddef>
#include <string_view>

struct lua_State;

namespace tamis::lua {

/// Lua's patterns (manual, 6.4.1) over one subject, every step counted by spend(), so that a pattern that tries
/// everything runs out of budget and not out of patience. Raises a Lua error for a malformed pattern.
class Pattern {
 public:
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);
  static constexpr std::size_t position = static_cast<std::size_t>(-2);  ///< length of a "()" capture
  static constexpr std::size_t most_captures = 32;

  struct Capture {
    std::size_t begin = 0;
    std::size_t length = 0;
  };

  Pattern(lua_State* state, std::string_view subject, std::string_view pattern)
      : state_(state), subject_(subject), pattern_(pattern) {}

  /// Where the match that starts at `from` ends; npos when none does. Captures are of that match.
  std::size_t match(std::size_t from);
  [[nodiscard]] std::size_t captures() const { return count_; }
  [[nodiscard]] const Capture& capture(std::size_t number) const { return held_[number]; }
  [[nodiscard]] std::string_view subject() const { return subject_; }

 private:
  std::size_t run(std::size_t s, std::size_t p);
  std::size_t start_capture(std::size_t s, std::size_t p, std::size_t length);
  std::size_t end_capture(std::size_t s, std::size_t p);
  std::size_t most_of(std::size_t s, std::size_t p, std::size_t after);
  std::size_t least_of(std::size_t s, std::size_t p, std::size_t after);
  std::size_t balanced(std::size_t s, std::size_t p);
  std::size_t again(std::size_t s, char number);
  [[nodiscard]] std::size_t class_end(std::size_t p);
  [[nodiscard]] bool single(std::size_t s, std::size_t p, std::size_t after);
  [[nodiscard]] bool in_set(unsigned char c, std::size_t p, std::size_t last);
  [[nodiscard]] std::size_t capture_to_close();
  [[nodiscard]] std::size_t checked_capture(char number);
  void fail(const char* why);

  lua_State* state_;
  std::string_view subject_;
  std::string_view pattern_;
  std::size_t count_ = 0;
  int depth_ = 0;
  std::array<Capture, most_captures> held_{};
};

}  // namespace tamis::lua

#endif
