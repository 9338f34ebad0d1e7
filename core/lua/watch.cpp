#include "core/lua/watch.h"

namespace tamis::lua {
namespace {

Watcher* watching = nullptr;

}  // namespace

void set_watcher(Watcher* watcher) { watching = watcher; }

Watched::Watched(std::string_view plugin, std::chrono::seconds time) {
  if (watching != nullptr) watching->starts(plugin, time);
}

Watched::~Watched() {
  if (watching != nullptr) watching->ends();
}

}  // namespace tamis::lua
