#include "core/lua/engine.h"

#include <lauxlib.h>
#include <lua.h>

#include <algorithm>
#include <functional>
#include <new>

#include "core/base/utf8.h"
#include "core/lua/globals.h"
#include "core/lua/lists.h"
#include "core/lua/results.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

constexpr std::size_t most_program = std::size_t{1} << 20U;
constexpr std::size_t most_words = 500;

std::string millions(std::int64_t count) {
  constexpr std::int64_t million = 1'000'000;
  return count % million == 0 ? std::to_string(count / million) + " million" : std::to_string(count);
}

std::string seconds(std::int64_t count) { return std::to_string(count) + (count == 1 ? " second" : " seconds"); }

/// A message of Lua without "plugin.lua:12: " in front, on one line, not endless.
std::string plain_message(std::string_view message, const std::string& file) {
  if (!file.empty() && message.starts_with(file + ":")) {
    const std::size_t end = message.find(": ", file.size() + 1);
    if (end != std::string_view::npos) message.remove_prefix(end + 2);
  }
  std::string out;
  for (std::size_t at = 0; at < message.size() && out.size() < most_words;) {
    const auto scalar = base::next_scalar(message, at);
    if (!scalar) continue;
    base::append_scalar(out, *scalar < 0x20 ? U' ' : *scalar);
  }
  return out;
}

/// The session pays for what is read on its behalf while a call runs.
class Working {
 public:
  Working(Session& session, lua_State* state) : session_(session) { session.payer = state; }
  Working(const Working&) = delete;
  Working& operator=(const Working&) = delete;
  ~Working() { session_.payer = nullptr; }

 private:
  Session& session_;
};

}  // namespace

/// Work that runs protected: Lua calls it with nothing on the stack.
struct Engine::Job {
  std::function<void(lua_State*)> work;
  Failure* failure = nullptr;
};

Engine::Engine(Limits limits) : meter_(limits) {
  meter_.start_clock();
  meter_.restart();
  state_ = lua_newstate(Meter::allocate, &meter_);
  if (state_ == nullptr) throw std::bad_alloc();
  set_session(state_, nullptr);
  Failure failure;
  Job job{[this](lua_State* state) {
            open_values(state);
            open_globals(state);
            environment_ = luaL_ref(state, LUA_REGISTRYINDEX);
            lua_newtable(state);
            globals_ = luaL_ref(state, LUA_REGISTRYINDEX);
          },
          &failure};
  if (!protect(job, failure)) {
    lua_close(state_);
    throw std::bad_alloc();
  }
  meter_.count(state_);
  // Rarely: a fiche makes little, and the budget of memory collects in need.
  lua_gc(state_, LUA_GCINC, 1000, 400, 0);
}

Engine::~Engine() { lua_close(state_); }

int Engine::protected_job(lua_State* state) {
  const Job& job = *static_cast<const Job*>(lua_touserdata(state, 1));
  lua_settop(state, 0);
  job.work(state);
  return 0;
}

/// Message handler: notes where the error was raised. Runs no code of the plugin.
int Engine::note_failure(lua_State* state) {
  auto& failure = *static_cast<Failure*>(lua_touserdata(state, lua_upvalueindex(1)));
  lua_Debug at{};
  for (int level = 0; lua_getstack(state, level, &at) != 0; ++level) {
    lua_getinfo(state, "Sl", &at);
    if (at.currentline <= 0) continue;
    failure.file = at.short_src;
    failure.line = at.currentline;
    break;
  }
  if (lua_type(state, 1) == LUA_TSTRING)
    failure.what = plain_message(string_at(state, 1), failure.file);
  else
    failure.what = "an error that is a " + std::string(luaL_typename(state, 1)) + ", not a message";
  return 1;
}

void Engine::explain(int status, Failure& failure) {
  if (meter_.late()) {
    // Where it was then is chance.
    failure = {"it took longer than its " + seconds(meter_.limits().time.count()), "", 0};
  } else if (meter_.spent()) {
    failure.what = "it spent its " + millions(meter_.limits().instructions) + " instructions";
  } else if (meter_.out_of_memory() || status != LUA_ERRRUN) {
    failure.what = "it needed more than its " + std::to_string(meter_.limits().bytes >> 10U) + " kilobytes of memory";
    failure.memory = true;
  }
}

bool Engine::protect(Job& job, Failure& failure) {
  lua_settop(state_, 0);
  lua_pushlightuserdata(state_, &failure);
  lua_pushcclosure(state_, note_failure, 1);
  lua_pushcfunction(state_, protected_job);
  lua_pushlightuserdata(state_, &job);
  const int status = lua_pcall(state_, 1, 0, 1);
  if (status != LUA_OK) explain(status, failure);
  lua_settop(state_, 0);
  return status == LUA_OK;
}

void Engine::collect() {
  Failure failure;
  Job job{[this](lua_State* state) {
            lua_newtable(state);
            lua_rawseti(state, LUA_REGISTRYINDEX, globals_);
            lua_gc(state, LUA_GCCOLLECT);
          },
          &failure};
  meter_.restart();
  protect(job, failure);
}

bool Engine::compile(const base::Source& source, const std::string& name, Failure& failure) {
  if (source.bytes().size() > most_program) {
    failure.file = name;
    failure.what = "the program is larger than a megabyte";
    return false;
  }
  meter_.start_clock();
  meter_.restart();
  Job job{[&](lua_State* state) {
            const std::string chunk = "=" + name;
            const std::string& bytes = source.bytes();
            if (luaL_loadbufferx(state, bytes.data(), bytes.size(), chunk.c_str(), "t") != LUA_OK) lua_error(state);
            chunks_.push_back(luaL_ref(state, LUA_REGISTRYINDEX));
          },
          &failure};
  const bool good = protect(job, failure);
  if (good) return true;
  // "plugin.lua:12: unexpected symbol near 'x'": the line stands in the message alone.
  std::string what = failure.what;
  if (what.starts_with(name + ":")) {
    what.erase(0, name.size() + 1);
    failure.line = std::atoi(what.c_str());
    what.erase(0, std::min(what.find(": "), what.size() - 2) + 2);
  }
  failure.what = what;
  failure.file = name;
  return false;
}

bool Engine::start(Session& session, Failure& failure) {
  meter_.restart();
  set_session(state_, &session);
  const Working working(session, state_);
  Job job{[this](lua_State* state) {
            lua_rawgeti(state, LUA_REGISTRYINDEX, environment_);
            push_environment(state, 1);
            lua_pushvalue(state, 2);
            lua_rawseti(state, LUA_REGISTRYINDEX, globals_);
            for (const int chunk : chunks_) {
              lua_rawgeti(state, LUA_REGISTRYINDEX, chunk);
              lua_pushvalue(state, 2);
              lua_setupvalue(state, -2, 1);
              lua_call(state, 0, 0);
            }
          },
          &failure};
  return protect(job, failure);
}

std::vector<std::string> Engine::functions() {
  std::vector<std::string> names;
  Failure failure;
  Job job{[&](lua_State* state) {
            lua_rawgeti(state, LUA_REGISTRYINDEX, globals_);
            lua_pushnil(state);
            while (lua_next(state, 1) != 0) {
              if (lua_type(state, -2) == LUA_TSTRING && lua_isfunction(state, -1))
                names.emplace_back(string_at(state, -2));
              lua_pop(state, 1);
            }
          },
          &failure};
  protect(job, failure);
  std::sort(names.begin(), names.end());
  return names;
}

bool Engine::has_function(const std::string& name) {
  bool has = false;
  Failure failure;
  Job job{[&](lua_State* state) {
            lua_rawgeti(state, LUA_REGISTRYINDEX, globals_);
            push(state, name);
            has = lua_rawget(state, 1) == LUA_TFUNCTION;
          },
          &failure};
  protect(job, failure);
  return has;
}

bool Engine::call(Session& session, const std::string& function, std::vector<MadeFile>* made, Failure& failure) {
  meter_.restart();
  set_session(state_, &session);
  const Working working(session, state_);
  Job job{[&](lua_State* state) {
            lua_rawgeti(state, LUA_REGISTRYINDEX, globals_);
            push(state, function);
            lua_rawget(state, 1);
            if (session.adding->over_all)
              push_list(state, session.given(), [state](Opened* fiche) { push_fiche(state, *fiche); });
            else
              push_fiche(state, *session.main);
            lua_call(state, 1, made == nullptr ? 0 : 1);
            if (made != nullptr) read_files(state, *made);
          },
          &failure};
  return protect(job, failure);
}

}  // namespace tamis::lua
