#ifndef CORE_LUA_WATCH_H
#define CORE_LUA_WATCH_H

#include <chrono>
#include <string_view>

namespace tamis::lua {

/// Told when a plugin starts to work in this process and when it has ended, so that a supervisor can end the process when
/// the plugin does not.
class Watcher {
 public:
  virtual ~Watcher() = default;
  /// `time`: what it may take by its own meter.
  virtual void starts(std::string_view plugin, std::chrono::seconds time) = 0;
  virtual void ends() = 0;
};

/// The one of this process; null: nobody watches.
void set_watcher(Watcher* watcher);

/// A plugin's work, from here to the end of the block.
class Watched {
 public:
  Watched(std::string_view plugin, std::chrono::seconds time);
  Watched(const Watched&) = delete;
  Watched& operator=(const Watched&) = delete;
  ~Watched();
};

}  // namespace tamis::lua

#endif
