#ifndef CORE_CLI_NEW_PLUGIN_H
#define CORE_CLI_NEW_PLUGIN_H

#include <string>
#include <string_view>
#include <vector>

namespace tamis::cli {

/// What a new plugin is to add.
struct NewPlugin {
  std::string id;
  bool check = false, conversion = false, export_ = false;
};

struct NewFile {
  std::string path;  ///< within the plugin's folder
  std::string bytes;
};

/// A plugin that works, with tests that pass: the start of one's own. Where it adds one thing that is called as the plugin
/// is; of several each has its kind behind the id.
std::vector<NewFile> new_plugin_files(const NewPlugin& wanted);

}  // namespace tamis::cli

#endif
