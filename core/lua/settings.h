#ifndef CORE_LUA_SETTINGS_H
#define CORE_LUA_SETTINGS_H

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/fiche/document.h"
#include "core/lua/manifest.h"

namespace tamis::lua {

/// A setting as the plugin gets it: a text or choice, a number, yes or no, a list.
using SettingValue = std::variant<std::string, double, bool, std::vector<std::string>>;
using Settings = std::map<std::string, SettingValue, std::less<>>;

/// What a text means for a setting. Refuses, with no span, what is not of its kind.
base::Result<SettingValue> read_setting(const Taking& taking, std::string_view text);

/// The manifest's defaults; words and lists without one are empty.
Settings standard_settings(const Manifest& manifest);

/// Puts one setting in; a name that the plugin does not have, or a value not of its kind, is refused with the
/// nearest right one. For "name=value" of a command line and for the kitchen's <setting>.
base::Result<bool> put_setting(const Manifest& manifest, std::string_view name, std::string_view text,
                               Settings& settings);

/// The settings of a kitchen's <plugin> element. Faults have their span in the kitchen's source.
void put_settings(const Manifest& manifest, const fiche::Document& kitchen, fiche::Node plugin, Settings& settings,
                  std::vector<base::Finding>& faults);

/// The parts of a text between separators, trimmed, empty ones left out.
std::vector<std::string> split(std::string_view text, char separator);

}  // namespace tamis::lua

#endif
