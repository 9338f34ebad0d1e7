#ifndef CORE_LUA_ENGINE_H
#define CORE_LUA_ENGINE_H

#include <memory>
#include <string>
#include <vector>

#include "core/base/source.h"
#include "core/lua/meter.h"
#include "core/lua/session.h"

struct lua_State;

namespace tamis::lua {

/// Why a call of a plugin came to nothing.
struct Failure {
  std::string what;      ///< "attempt to index a nil value (local 'x')", "spent its 20 million instructions"
  std::string file;      ///< of the program; "" when not known
  int line = 0;          ///< 0 when not known
  bool memory = false;   ///< there was not enough of it
};

/// A file that an export made.
struct MadeFile {
  std::string name;   ///< "" when the plugin gave the bytes alone
  std::string bytes;
};

/// One plugin's program in a Lua state of its own: compiled once, run afresh for every fiche in a new environment.
class Engine {
 public:
  explicit Engine(Limits limits);
  ~Engine();
  Engine(const Engine&) = delete;
  Engine& operator=(const Engine&) = delete;

  /// Compiles a file; false with `failure` filled when it is no Lua (text only, never bytecode).
  bool compile(const base::Source& source, const std::string& name, Failure& failure);

  /// For a new fiche: its time starts.
  void start_clock() { meter_.start_clock(); }
  /// Throws away what the last fiche has left: the next call has as much memory as the first.
  void collect();
  /// A new environment with everything compiled run in it, in order.
  bool start(Session& session, Failure& failure);
  /// Global functions that start() left, for near misses.
  std::vector<std::string> functions();
  [[nodiscard]] bool has_function(const std::string& name);

  /// Calls a function that start() left with the fiche the session gives, or the list of them where what is being
  /// called is over all. What an export gives is read within the same budget.
  bool call(Session& session, const std::string& function, std::vector<MadeFile>* made, Failure& failure);

  [[nodiscard]] const Meter& meter() const { return meter_; }

 private:
  struct Job;
  static int protected_job(lua_State* state);
  static int note_failure(lua_State* state);
  bool protect(Job& job, Failure& failure);
  void explain(int status, Failure& failure);

  Meter meter_;
  lua_State* state_ = nullptr;
  std::vector<int> chunks_;  // references in the registry
  int environment_ = 0;      // reference to the metatable of environments
  int globals_ = 0;          // reference to the environment at hand
};

}  // namespace tamis::lua

#endif
