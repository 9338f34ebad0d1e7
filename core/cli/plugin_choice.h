#ifndef CORE_CLI_PLUGIN_CHOICE_H
#define CORE_CLI_PLUGIN_CHOICE_H

#include <string>
#include <string_view>

#include "core/cli/kitchen_plugins.h"
#include "core/cli/report.h"

namespace tamis::cli {

/// A plugin that does what was asked for.
struct Chosen {
  lua::Plugin* plugin = nullptr;  ///< null when there is none, or it cannot be loaded; then that was said
  const lua::Addition* addition = nullptr;
};

/// The plugin that adds a conversion or export of that name. What stands in the way is told to `report` and counted as
/// failed: a broken plugin, a setting it does not have, a name that nothing is added under (with what there is).
Chosen choose_plugin(KitchenPlugins& plugins, lua::Addition::Kind kind, std::string_view name,
                     std::string_view settings, Report& report, Totals& totals);

/// "sheet, order" of that kind; "" when there are none.
std::string offered(KitchenPlugins& plugins, lua::Addition::Kind kind);

}  // namespace tamis::cli

#endif
