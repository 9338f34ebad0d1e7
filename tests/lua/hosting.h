#ifndef TESTS_LUA_HOSTING_H
#define TESTS_LUA_HOSTING_H

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/lua/plugin.h"

namespace tamis::tests {

/// A manifest that adds one thing: check "house-test", conversion "turn" or export "paper".
std::string manifest_of(std::string_view kind, std::string_view more = {});

/// A plugin of these two texts; settings as "a=1;b=2". Empty when it cannot be loaded.
struct Loaded {
  std::unique_ptr<lua::Plugin> plugin;
  std::vector<lua::LoadFault> faults;
  /// "plugin.lua:2:5: message [advice]", a line each.
  [[nodiscard]] std::string lines() const;
};
Loaded load_plugin(const std::string& manifest, const std::string& program, std::string_view settings = {});

/// The same of a plugin of several files.
Loaded load_files(const lua::PluginFiles& files, std::string_view settings = {});

/// A plugin in the box, "sheet", as it lies there.
Loaded load_boxed(const std::string& id, std::string_view settings = {});

/// A check plugin whose function is `body`.
Loaded load_check(const std::string& body);

/// What a plugin's checks say of a text: "line:column rule: message [advice]", a line each, built-in rules left out.
std::string said(lua::Plugin& plugin, const std::string& fiche, const fiche::Kitchen& kitchen = {},
                 fiche::Library& library = fiche::empty_library());

/// Holds what was made to the file kept of it, "card/custard.md" below tests/lua; TAMIS_WRITE_GOLDEN=1 accepts it.
void check_kept(const std::string& name, const std::string& made);

/// The fiches of the project below these folders, path and text of each.
std::vector<std::pair<std::string, std::string>> project_fiches(
    std::vector<std::string> places = {"tests/kitchen", "tests/against/real", "tests/lua/sheet", "schemas"});

std::shared_ptr<const fiche::Document> document_of(const std::string& text, const std::string& path = "a.fiche.xml");

/// A small good fiche.
extern const std::string custard;

}  // namespace tamis::tests

#endif
