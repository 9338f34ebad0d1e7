#ifndef CORE_CLI_PLUGIN_FILES_H
#define CORE_CLI_PLUGIN_FILES_H

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/lua/plugin.h"

namespace tamis::cli {

/// The folder of the plugins in the box, found from where the program itself stands, links followed:
/// ../share/tamis/plugins when installed, plugins beside it where it was built. Empty when neither is there.
const std::string& box_folder();

/// The folders in the box that hold a plugin.xml, by name.
std::vector<std::string> boxed_plugins();

/// The files of a plugin's folder. Refuses, with no span, where one cannot be read or there is no plugin.lua.
base::Result<lua::PluginFiles> read_plugin_files(const std::string& folder);

}  // namespace tamis::cli

#endif
