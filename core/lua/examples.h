#ifndef CORE_LUA_EXAMPLES_H
#define CORE_LUA_EXAMPLES_H

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/lua/plugin.h"

namespace tamis::lua {

/// What is found in an example of a check.
struct TriedExample {
  std::shared_ptr<const base::Source> source;  ///< the whole document that the example stands in
  std::vector<base::Finding> findings;         ///< of the check, of the other checks of the plugin, of the built-in rules
  std::vector<LoadFault> faults;               ///< why the plugin could not be loaded
};

/// The document of an example: itself where it is a whole fiche, else with what it needs around it.
std::string example_text(std::string_view example);

/// Judges `addition.wrong` or `addition.right` with the settings that the manifest gives its examples, in a kitchen that
/// says nothing else and has what the plugin gives it.
TriedExample try_example(const PluginFiles& files, const Manifest& manifest, const Addition& addition,
                         std::string_view example);

}  // namespace tamis::lua

#endif
