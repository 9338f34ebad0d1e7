#ifndef CORE_CLI_PLUGIN_CHOICE_H
#define CORE_CLI_PLUGIN_CHOICE_H

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "core/cli/kitchen_plugins.h"
#include "core/cli/task.h"
#include "core/cli/verb.h"

namespace tamis::cli {

/// A plugin that does what was asked for.
struct Chosen {
  lua::Plugin* plugin = nullptr;  ///< null when there is none, or it cannot be loaded; then `faults` say why
  const lua::Addition* addition = nullptr;
  std::vector<Fault> faults;      ///< those without a path are about the command line
};

/// The plugin that adds a conversion or export of that name, unless it is `left_out`. What stands in the way is a fault: a
/// broken plugin, a setting it does not have, a name that nothing is added under (with what there is).
Chosen choose_plugin(KitchenPlugins& plugins, lua::Addition::Kind kind, std::string_view name, std::string_view settings,
                     const std::vector<LeftOut>& left_out);

/// "sheet, order" of that kind; "" when there are none.
std::string offered(KitchenPlugins& plugins, lua::Addition::Kind kind);

/// What --seconds says, and what is wrong with it; "" when nothing is.
std::chrono::seconds seconds_of(const Request& request);
std::string seconds_misuse(const Request& request);

}  // namespace tamis::cli

#endif
