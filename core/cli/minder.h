#ifndef CORE_CLI_MINDER_H
#define CORE_CLI_MINDER_H

#include <atomic>
#include <chrono>
#include <cstdint>
#include <string>

#include "core/lua/watch.h"

namespace tamis::cli {

/// A page of memory that a worker and its supervisor share: the worker writes which plugin it is running and until when that
/// may take; the supervisor reads it, while the worker lives and after it is dead.
class Minder final : public lua::Watcher {
 public:
  Minder();  ///< minds nothing where the system gives no memory for it
  Minder(const Minder&) = delete;
  Minder& operator=(const Minder&) = delete;
  ~Minder() override;

  /// In the worker: what runs is written down from here on, and the system's own limits are set around it.
  void mind();
  void starts(std::string_view plugin, std::chrono::seconds time) override;
  void ends() override;

  /// In the supervisor: the plugin at work; "" when there is none.
  [[nodiscard]] std::string plugin() const;
  /// Whether it should have ended by its own meter.
  [[nodiscard]] bool overdue() const;
  /// What it may take.
  [[nodiscard]] std::chrono::seconds time() const;

 private:
  struct Page {
    std::atomic<std::int64_t> until;  ///< nanoseconds of the steady clock; 0: no plugin at work
    std::int64_t seconds;
    char plugin[128];
  };
  static_assert(std::atomic<std::int64_t>::is_always_lock_free, "two processes share it");

  Page* page_ = nullptr;
};

}  // namespace tamis::cli

#endif
