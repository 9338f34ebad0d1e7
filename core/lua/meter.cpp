#include "core/lua/meter.h"

#include <lua.h>

#include <algorithm>
#include <cstdlib>

namespace tamis::lua {
namespace {

constexpr int longest_stride = 1024, shortest_stride = 16;
constexpr std::size_t bytes_for_a_long_stride = std::size_t{512} << 10U;
constexpr std::size_t large_block = std::size_t{64} << 10U;
constexpr int most_refused = 64;
constexpr std::int64_t work_a_look = 1000;
constexpr std::chrono::milliseconds slow_stride{20};
constexpr std::size_t long_string = 64;     // shorter ones are paid for by the instruction that makes them
constexpr std::size_t bytes_an_instruction = 32;

[[noreturn]] void raise_spent(lua_State* state) {
  lua_pushliteral(state, "budget spent");
  lua_error(state);
  std::abort();  // lua_error does not come back
}

int stride_for(std::size_t bytes) {
  int stride = longest_stride;
  while (bytes > bytes_for_a_long_stride && stride > shortest_stride) {
    bytes /= 2;
    stride /= 2;
  }
  return stride;
}

}  // namespace

void Meter::start_clock() {
  started_ = looked_ = std::chrono::steady_clock::now();
  late_ = false;
  long_bytes_ = 0;
  collected_at_ = 0;
}

void Meter::look_at_clock() {
  unwatched_ = 0;
  looked_ = std::chrono::steady_clock::now();
  late_ = late_ || looked_ - started_ > limits_.time;
}

void Meter::count(lua_State* state) {
  state_ = state;
  set_stride(longest_stride);
}

void Meter::set_stride(int stride) {
  stride_ = stride;
  lua_sethook(state_, hook, LUA_MASKCOUNT, stride);
}

/// Counts a stride of instructions, taken whole in long ones. A stride that took long is followed by short ones.
void Meter::hook(lua_State* state, lua_Debug* /*where*/) {
  Meter& self = meter_of(state);
  const auto before = self.looked_;
  self.look_at_clock();
  self.counted_ += self.stride_;
  if (self.counted_ >= longest_stride) {
    self.counted_ -= longest_stride;
    self.take(longest_stride);
  }
  // Lua lives on where its table of strings cannot grow, and collects for every string it makes.
  if (self.refused_ > most_refused) self.out_of_memory_ = true;
  if (self.spent() || self.out_of_memory_) raise_spent(state);
  self.collect_in_need();
  const int wanted = self.looked_ - before > slow_stride ? shortest_stride : stride_for(self.long_bytes_);
  if (wanted < self.stride_ || (wanted > self.stride_ && self.counted_ == 0)) self.set_stride(wanted);
}

/// Lua's own collection in need runs no finalizers, and amounts have one: so collect before the need.
void Meter::collect_in_need() {
  if (bytes_ < limits_.bytes / 2 || bytes_ < collected_at_ + limits_.bytes / 16) return;
  lua_gc(state_, LUA_GCCOLLECT);
  collected_at_ = bytes_;
}

void Meter::restart() {
  left_ = limits_.instructions;
  spent_ = false;
  counted_ = 0;
  refused_ = 0;
  if (state_ != nullptr) set_stride(stride_for(long_bytes_));
  out_of_memory_ = false;
}

bool Meter::take(std::int64_t work) {
  left_ -= std::min(work, limits_.instructions + 1);
  spent_ = spent_ || left_ < 0;
  left_ = std::max<std::int64_t>(left_, -1);
  unwatched_ += work;
  if (unwatched_ >= work_a_look) look_at_clock();
  return !spent();
}

bool Meter::may_hold(std::size_t less, std::size_t more) { return bytes_ - less + more <= limits_.bytes; }

void* Meter::allocate(void* meter, void* block, std::size_t old_size, std::size_t new_size) {
  Meter& self = *static_cast<Meter*>(meter);
  const std::size_t held = block == nullptr ? 0 : old_size;  // for a new block the size tells its kind
  if (new_size == 0) {
    self.bytes_ -= held;
    std::free(block);
    return nullptr;
  }
  if (new_size > held) {
    const bool string = block == nullptr && old_size == LUA_TSTRING && new_size > long_string;
    if (string && !self.take(static_cast<std::int64_t>(new_size / bytes_an_instruction))) return nullptr;
    if (!self.may_hold(held, new_size)) {
      ++self.refused_;
      return nullptr;
    }
  }
  void* got = std::realloc(block, new_size);
  if (got == nullptr) return new_size <= held ? block : nullptr;
  self.bytes_ = self.bytes_ - held + new_size;
  if (block == nullptr && old_size == LUA_TSTRING && new_size > large_block) {
    self.long_bytes_ += new_size;
    if (self.stride_ > 2 * stride_for(self.long_bytes_)) self.set_stride(stride_for(self.long_bytes_));
  }
  return got;
}

Meter& meter_of(lua_State* state) {
  void* meter = nullptr;
  lua_getallocf(state, &meter);
  return *static_cast<Meter*>(meter);
}

void spend(lua_State* state, std::size_t work) {
  constexpr std::size_t most = std::size_t{1} << 40U;
  if (!meter_of(state).take(static_cast<std::int64_t>(std::min(work, most)))) raise_spent(state);
}

}  // namespace tamis::lua
