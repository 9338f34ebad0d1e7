#ifndef CORE_LUA_METER_H
#define CORE_LUA_METER_H

#include <chrono>
#include <cstddef>
#include <cstdint>

struct lua_Debug;
struct lua_State;

namespace tamis::lua {

/// What one call of a plugin may spend; the seconds are for all its calls on one fiche together.
struct Limits {
  std::int64_t instructions = 20'000'000;
  std::size_t bytes = std::size_t{32} << 20U;
  std::chrono::seconds time{10};
};
inline constexpr std::int64_t most_instructions = 200'000'000;
inline constexpr std::size_t most_bytes = std::size_t{256} << 20U;

/// Counts what a plugin spends: instructions of Lua by a hook, what a library function does in one instruction by
/// spend(), the bytes of long strings where they are made, and the memory held. Once spent it stays spent until the next call:
/// whatever goes on raises again. What Lua does in one instruction and tells nobody (comparing two long strings, reading one
/// as a number) is held by the clock, which is looked at the more often the more bytes of long strings were made.
///
/// What is counted does not depend on the clock, nor on what earlier calls have left in memory: a call that spends its
/// budget does so at the same place each time.
class Meter {
 public:
  explicit Meter(Limits limits) : limits_(limits) {}
  Meter(const Meter&) = delete;
  Meter& operator=(const Meter&) = delete;

  /// For a new fiche: the clock starts.
  void start_clock();
  /// For a new call: the whole budget again, but for the time.
  void restart();
  /// Counts work; false when there is no budget left for it.
  bool take(std::int64_t work);

  [[nodiscard]] const Limits& limits() const { return limits_; }
  [[nodiscard]] bool spent() const { return spent_ || late_; }
  [[nodiscard]] bool late() const { return late_; }
  [[nodiscard]] bool out_of_memory() const { return out_of_memory_; }
  [[nodiscard]] std::size_t bytes() const { return bytes_; }
  [[nodiscard]] std::int64_t used() const { return limits_.instructions - left_; }

  /// Lua's allocator over a Meter.
  static void* allocate(void* meter, void* block, std::size_t old_size, std::size_t new_size);
  /// A memory error that a plugin could catch: it is kept for the end of the call.
  void note_memory_error() { out_of_memory_ = true; }

  /// Puts the counting hook on a state that was made with allocate.
  void count(lua_State* state);

 private:
  static void hook(lua_State* state, lua_Debug* where);
  void collect_in_need();
  bool may_hold(std::size_t less, std::size_t more);
  void look_at_clock();
  void set_stride(int stride);

  Limits limits_;
  std::int64_t left_ = 0;
  std::size_t bytes_ = 0;
  std::int64_t unwatched_ = 0;  ///< work since the clock was looked at
  std::size_t long_bytes_ = 0;  ///< of long strings made for this fiche
  std::size_t collected_at_ = 0;  ///< bytes held after the last collection in need
  int refused_ = 0;             ///< blocks there was no room for, each after a whole collection
  int counted_ = 0;             ///< instructions since the last that were taken
  int stride_ = 0;              ///< instructions from one hook to the next; 0: no hook yet
  lua_State* state_ = nullptr;  ///< that the hook is on
  std::chrono::steady_clock::time_point started_, looked_;
  bool spent_ = false;
  bool late_ = false;
  bool out_of_memory_ = false;
};

/// Counts `work` steps done inside one instruction; raises an error when the budget is spent.
void spend(lua_State* state, std::size_t work);

Meter& meter_of(lua_State* state);

}  // namespace tamis::lua

#endif
