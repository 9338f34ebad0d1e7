#ifndef CORE_CLI_PLUGIN_TRIAL_H
#define CORE_CLI_PLUGIN_TRIAL_H

#include <string>
#include <vector>

#include "core/cli/plugin_case.h"
#include "core/lua/plugin.h"

namespace tamis::cli {

/// What came of a test: the files its plugin made, spelled and named as PluginCase expects them.
struct Trial {
  CaseFiles made;
  std::vector<std::string> faults;  ///< why it could not be done, each with its path
};

/// Does what the test expects something of, with the settings and the kitchen of the test and no others; all that the
/// plugin adds, where `all` says so. The fiche's path is its name, so that what is made does not depend on the folder.
Trial try_case(const lua::PluginFiles& files, const lua::Manifest& manifest, const PluginCase& one, bool all);

}  // namespace tamis::cli

#endif
