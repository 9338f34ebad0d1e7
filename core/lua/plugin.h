#ifndef CORE_LUA_PLUGIN_H
#define CORE_LUA_PLUGIN_H

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/fiche/library.h"
#include "core/lua/engine.h"
#include "core/lua/manifest.h"
#include "core/lua/settings.h"
#include "core/rules/rule.h"

namespace tamis::lua {

/// A plugin's files as they were read. Who calls knows where they lie.
struct PluginFiles {
  std::string path;                             ///< of the folder, as it is shown
  std::shared_ptr<const base::Source> manifest;
  /// Every .lua file of the folder in the order of their names, plugin.lua last.
  std::vector<std::shared_ptr<const base::Source>> programs;
};

/// Why a plugin cannot be loaded: a finding in one of its files, or in the kitchen file.
struct LoadFault {
  std::shared_ptr<const base::Source> source;
  base::Finding finding;
};

/// What an export made, or why it did not.
struct Exported {
  std::vector<MadeFile> files;           ///< empty when it went wrong; each has a name
  std::vector<base::Finding> findings;   ///< what it had to say, plugin-error among it
  std::string talk;
};

/// The same of an export over all fiches together.
struct ExportedAll {
  std::vector<MadeFile> files;
  std::vector<std::vector<base::Finding>> findings;  ///< of each fiche, in order; plugin-error with the first
  std::string talk;
};

struct PluginConverted {
  fiche::Document document;              ///< as it was, when something went wrong
  std::vector<base::Finding> findings;
  std::string talk;
  bool done = false;
};

/// A plugin, ready to work. Not for use from two threads at once.
///
/// Whatever it does, a call ends within its budget; what went wrong is a finding of rule plugin-error that names
/// plugin, function, file and line, and marks the element it had in hand. Findings it made before that are kept.
class Plugin {
 public:
  /// Reads, compiles and runs it once without a fiche, to see that every function is there. Null with `faults`
  /// filled when something is wrong. `settings` are the manifest's defaults with the kitchen's put over them.
  static std::unique_ptr<Plugin> load(const PluginFiles& files, const Manifest& manifest, Settings settings,
                                      std::vector<LoadFault>& faults);

  [[nodiscard]] const Manifest& manifest() const { return manifest_; }
  [[nodiscard]] const std::string& path() const { return path_; }

  /// All its checks on a fiche that is being checked; what they print comes behind `talk`. Other documents are passed by.
  void run_checks(rules::Check& check, std::string& talk);

  /// A conversion: on a copy, which must be readable and without any error that the original had not.
  PluginConverted convert(const Addition& conversion, const fiche::Document& document, const fiche::Kitchen& kitchen,
                          fiche::Library& library);

  Exported export_fiche(const Addition& wanted, const std::shared_ptr<const fiche::Document>& document,
                        const fiche::Kitchen& kitchen, fiche::Library& library);
  /// What is made of all of them together (Addition::over_all), at least one, of one kitchen.
  ExportedAll export_all(const Addition& wanted, const std::vector<std::shared_ptr<const fiche::Document>>& documents,
                         const fiche::Kitchen& kitchen, fiche::Library& library);

 private:
  Plugin(const PluginFiles& files, const Manifest& manifest, Settings settings);
  bool compile(const PluginFiles& files, std::vector<LoadFault>& faults);
  bool try_out(std::vector<LoadFault>& faults);
  bool work(Session& session, const Addition& addition, bool& started, std::vector<MadeFile>* made);
  void complain(Session& session, const Addition& addition, const Failure& failure);
  [[nodiscard]] LoadFault fault_of(const Failure& failure) const;
  [[nodiscard]] std::string source_name() const;

  Manifest manifest_;
  std::string path_;
  Settings settings_;
  std::vector<std::shared_ptr<const base::Source>> programs_;
  Engine engine_;
};

/// Several plugins heard in a check, in order; what they print is kept until it is taken.
class PluginChecks final : public rules::MoreRules {
 public:
  explicit PluginChecks(std::vector<Plugin*> plugins) : plugins_(std::move(plugins)) {}
  void run(rules::Check& check) override;
  [[nodiscard]] std::string take_talk() { return std::exchange(talk_, {}); }

 private:
  std::vector<Plugin*> plugins_;
  std::string talk_;
};

}  // namespace tamis::lua

#endif
