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

/// The folder of a plugin that a kitchen file names: by its path, seen from the kitchen file, else by its id in the box. Empty
/// when there is none.
std::string folder_of_plugin(const fiche::Document& kitchen, fiche::Node plugin);

/// The files of a plugin's folder. Refuses, with no span, where one cannot be read. A plugin that has no
/// program, and gives foods, meanings and verbs alone, has no plugin.lua.
base::Result<lua::PluginFiles> read_plugin_files(const std::string& folder);

}  // namespace tamis::cli

#endif
