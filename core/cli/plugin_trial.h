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

/// What is not right with the examples of a check, a line each: the check finds the wrong one and passes the right one,
/// and the built-in rules find no error in either.
std::string tried_examples(const lua::PluginFiles& files, const lua::Manifest& manifest, const lua::Addition& check);

}  // namespace tamis::cli

#endif
