#ifndef CORE_CLI_SURROUNDINGS_H
#define CORE_CLI_SURROUNDINGS_H

#include <chrono>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/cli/file_library.h"
#include "core/cli/kitchen_plugins.h"
#include "core/fiche/kitchen.h"

namespace tamis::cli {

/// The kitchen and library a file is judged with.
struct Around {
  std::shared_ptr<const fiche::Kitchen> kitchen;  ///< never null; states nothing where there is no kitchen file
  std::string kitchen_path;                       ///< "" without one
  std::string root;                               ///< the folder references may not leave; "": the file's own
  std::string fault;                              ///< why the kitchen file could not be read; "" when it could
};

/// Finds kitchen.xml upwards from each file, unless one is named, and keeps each that was read.
class Surroundings {
 public:
  explicit Surroundings(std::string named_kitchen) : named_(std::move(named_kitchen)) {}

  const Around& of(const std::string& path);
  /// The library of that file. Good until the next call.
  fiche::Library& library(const std::string& path);
  /// Whether the kitchens' plugins are heard too, as in a check.
  void hear_plugins(bool wanted) { hears_plugins_ = wanted; }
  [[nodiscard]] bool hears_plugins() const { return hears_plugins_; }
  /// The seconds a plugin may work on one fiche.
  void allow(std::chrono::seconds time) { time_ = time; }
  /// Plugins that are not heard, until told otherwise.
  void leave_out(std::vector<std::string> ids) { left_out_ = std::move(ids); }
  /// Whether that file's kitchen names plugins. Runs nothing of them.
  [[nodiscard]] bool names_plugins(const std::string& path) { return KitchenPlugins::any_named(*of(path).kitchen); }
  /// What checks of that file's kitchen's plugins have printed.
  std::string take_talk(const std::string& path) { return hears_plugins_ ? plugins(path).take_talk() : std::string(); }
  /// The plugins of that file's kitchen.
  KitchenPlugins& plugins(const std::string& path);

 private:
  std::shared_ptr<const Around> of_folder(const std::string& real_folder);
  std::shared_ptr<const Around> of_kitchen(const std::string& path);

  std::string named_;
  bool hears_plugins_ = false;
  std::chrono::seconds time_{lua::Limits{}.time};
  std::vector<std::string> left_out_;
  std::map<std::string, std::shared_ptr<const Around>, std::less<>> by_folder_;
  std::map<std::string, std::shared_ptr<const Around>, std::less<>> by_kitchen_;
  std::map<const fiche::Kitchen*, std::unique_ptr<KitchenPlugins>> plugins_;
  std::string root_;
  std::unique_ptr<FileLibrary> library_;
};

}  // namespace tamis::cli

#endif
