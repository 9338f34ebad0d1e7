#ifndef CORE_CLI_KITCHEN_PLUGINS_H
#define CORE_CLI_KITCHEN_PLUGINS_H

#include <chrono>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/fiche/kitchen.h"
#include "core/lua/plugin.h"

namespace tamis::cli {

/// The plugins of one kitchen: those its file names, in its order, and those in the box. Checks are heard of the
/// kitchen's own; conversions and exports of all.
class KitchenPlugins {
 public:
  /// What cannot be loaded, in words, with the file and place it is at.
  struct Broken {
    std::string path;
    std::string why;
  };

  explicit KitchenPlugins(std::shared_ptr<const fiche::Kitchen> kitchen);

  /// Whether the kitchen names any. Runs nothing of them.
  [[nodiscard]] static bool any_named(const fiche::Kitchen& kitchen);
  /// The seconds that a plugin may work on one fiche, for those loaded from here on.
  void allow(std::chrono::seconds time) { time_ = time; }
  /// Plugins that are not to be loaded or heard, until told otherwise.
  void leave_out(std::vector<std::string> ids) { left_out_ = std::move(ids); }

  /// The checks of the kitchen's plugins that can be used, loaded when first asked for; null when it has none.
  lua::PluginChecks* checks();
  /// What they have printed since this was asked last.
  std::string take_talk() { return checks_ == nullptr ? std::string() : checks_->take_talk(); }
  /// Why some of the kitchen's own cannot be used; empty when all can. Loads them.
  const std::vector<Broken>& broken();

  /// One thing that some plugin adds.
  struct Offer {
    const lua::Manifest* manifest = nullptr;
    const lua::Addition* addition = nullptr;
    const lua::PluginFiles* files = nullptr;
    std::string path;          ///< of the plugin's folder
    bool of_kitchen = false;   ///< named by the kitchen file
  };
  /// A plugin, whatever it adds.
  struct Held {
    const lua::Manifest* manifest = nullptr;
    std::string path;
    bool of_kitchen = false;
  };
  /// All of them, the kitchen's first.
  std::vector<Held> all();
  /// All that they add, the kitchen's first. Of a plugin in the box that cannot be read nothing is offered, and `broken` says so.
  std::vector<Offer> offers();

  /// A setting as it stands in this kitchen.
  struct SettingIs {
    const lua::Taking* taking = nullptr;
    std::string value;  ///< as written; "" when it is not set
    std::string from;   ///< "kitchen.xml, line 6", "by default"; "" when it is not set
  };
  std::vector<SettingIs> settings(const lua::Manifest& manifest);

  /// The plugin that adds a conversion or export of that name, with settings "a=1;b=2" over the kitchen's. Null, with
  /// `faults` filled, when it cannot be loaded or the settings are none of its.
  lua::Plugin* load(const Offer& offer, std::string_view settings, std::vector<Broken>& faults);

 private:
  struct Entry {
    lua::PluginFiles files;
    lua::Manifest manifest;
    fiche::Node named = fiche::none;  ///< the kitchen's <plugin>
    bool tried = false;               ///< to load it with the kitchen's settings
    std::unique_ptr<lua::Plugin> plugin;
    std::string with;                 ///< the settings it was loaded with, beside the kitchen's
  };

  void read_kitchen();
  void read_named(fiche::Node plugin);
  void read_box();
  void say(fiche::Node n, fiche::At at, const std::string& message, const std::string& advice);
  bool load_entry(Entry& entry, std::string_view settings, std::vector<Broken>& faults);
  bool check_names(const Entry& entry);
  void load_named();
  [[nodiscard]] bool is_left_out(const Entry& entry) const;

  std::shared_ptr<const fiche::Kitchen> kitchen_;
  std::vector<std::unique_ptr<Entry>> entries_;
  std::vector<Broken> broken_;
  std::unique_ptr<lua::PluginChecks> checks_;
  std::vector<lua::Plugin*> heard_;
  std::vector<std::string> left_out_;
  std::chrono::seconds time_{lua::Limits{}.time};
  bool read_ = false;
  bool box_read_ = false;
};

}  // namespace tamis::cli

#endif
