#include "core/cli/plugin_files.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/cli/file_library.h"
#include "core/cli/files.h"

namespace tamis::cli {
namespace {

constexpr std::size_t most_programs = 64;

base::Finding refusal(std::string message) {
  base::Finding made;
  made.rule = "plugin-error";
  made.message = std::move(message);
  return made;
}

std::string find_box() {
  const std::string program = real_path("/proc/self/exe");
  if (program.empty()) return {};
  const std::string beside = folder_of(program);
  for (const std::string& folder : {folder_of(beside) + "/share/tamis/plugins", beside + "/plugins"})
    if (kind_of(folder) == PathKind::folder) return real_path(folder);
  return {};
}

}  // namespace

const std::string& box_folder() {
  static const std::string folder = find_box();
  return folder;
}

std::vector<std::string> boxed_plugins() {
  std::vector<std::string> folders;
  std::vector<std::string> names;
  if (box_folder().empty() || names_in(box_folder(), names) != 0) return folders;
  for (const std::string& name : names)
    if (kind_of(box_folder() + "/" + name + "/plugin.xml") == PathKind::file)
      folders.push_back(box_folder() + "/" + name);
  return folders;
}

std::string folder_of_plugin(const fiche::Document& kitchen, fiche::Node plugin) {
  const std::string path(kitchen.get(plugin, fiche::At::path));
  std::string folder = path.starts_with('/') ? path : folder_of(kitchen.source().path()) + "/" + path;
  if (!path.empty()) return kind_of(folder) == PathKind::folder ? folder : "";
  const std::string_view id = base::trimmed(kitchen.get(plugin, fiche::At::id));
  for (std::string& one : boxed_plugins())
    if (std::string_view(one).substr(one.rfind('/') + 1) == id) return std::move(one);
  return "";
}

base::Result<lua::PluginFiles> read_plugin_files(const std::string& folder) {
  lua::PluginFiles files;
  files.path = folder;
  const auto manifest = read_file(folder + "/plugin.xml");
  if (!manifest) return refusal(folder + "/plugin.xml " + manifest.fault().message);
  files.manifest = *manifest;
  std::vector<std::string> names;
  if (const int why = names_in(folder, names); why != 0) return refusal(folder + " cannot be read: " + reason(why));
  std::erase_if(names, [](const std::string& name) { return !name.ends_with(".lua") || name == "plugin.lua"; });
  if (kind_of(folder + "/plugin.lua") != PathKind::nothing) names.emplace_back("plugin.lua");
  if (names.size() > most_programs)
    return refusal(folder + " holds more than " + std::to_string(most_programs) + " .lua files");
  for (const std::string& name : names) {
    const auto program = read_file(folder + "/" + name);
    if (!program) return refusal(folder + "/" + name + " " + program.fault().message);
    files.programs.push_back(*program);
  }
  return files;
}

}  // namespace tamis::cli
