#include "core/lua/meter.h"

#include <lua.h>

#include <algorithm>
#include <cstdlib>

namespace tamis::lua {
namespace {

constexpr int instructions_a_hook = 1000;
constexpr std::size_t long_string = 64;     // shorter ones are paid for by the instruction that makes them
constexpr std::size_t bytes_an_instruction = 32;

[[noreturn]] void raise_spent(lua_State* state) {
  lua_pushliteral(state, "budget spent");
  lua_error(state);
  std::abort();  // lua_error does not come back
}

void hook(lua_State* state, lua_Debug* /*where*/) {
  if (!meter_of(state).take(instructions_a_hook)) raise_spent(state);
}

}  // namespace

void Meter::restart() {
  left_ = limits_.instructions;
  spent_ = false;
  out_of_memory_ = false;
}

bool Meter::take(std::int64_t work) {
  left_ -= std::min(work, limits_.instructions + 1);
  spent_ = spent_ || left_ < 0;
  left_ = std::max<std::int64_t>(left_, -1);
  return !spent_;
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
    if (!self.may_hold(held, new_size)) return nullptr;
  }
  void* got = std::realloc(block, new_size);
  if (got == nullptr) return new_size <= held ? block : nullptr;
  self.bytes_ = self.bytes_ - held + new_size;
  return got;
}

Meter& meter_of(lua_State* state) {
  void* meter = nullptr;
  lua_getallocf(state, &meter);
  return *static_cast<Meter*>(meter);
}

void count_instructions(lua_State* state) { lua_sethook(state, hook, LUA_MASKCOUNT, instructions_a_hook); }

void spend(lua_State* state, std::size_t work) {
  constexpr std::size_t most = std::size_t{1} << 40U;
  if (!meter_of(state).take(static_cast<std::int64_t>(std::min(work, most)))) raise_spent(state);
}

}  // namespace tamis::lua
