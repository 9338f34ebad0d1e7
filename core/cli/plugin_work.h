#ifndef CORE_CLI_PLUGIN_WORK_H
#define CORE_CLI_PLUGIN_WORK_H

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "core/cli/crew.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"

namespace tamis::cli {

/// The one thing that a plugin is asked to do with fiche after fiche: an export or a conversion. It is done in a worker
/// process, which is ended when the plugin does not end; here comes only what was made.
class PluginWork {
 public:
  struct Wish {
    lua::Addition::Kind kind = lua::Addition::Kind::export_;
    std::string name;
    std::string settings;  ///< "a=1;b=2"
  };
  /// The files an export made of a fiche, or the one text of a conversion (without a name); none when it went wrong.
  using Put = std::function<void(const std::string& path, const std::vector<lua::MadeFile>& files)>;

  /// What the plugin had to say goes to `report`, and is counted in `totals`. With `all`, a fiche that cannot be worked on does
  /// not stop the others.
  PluginWork(Wish wish, bool all, Surroundings& surroundings, Report& report, Totals& totals, Put put);

  /// One fiche, or all those that an export is made of together. False when no more is wanted.
  bool give(const std::vector<std::shared_ptr<const base::Source>>& sources);
  void finish() { crew_.finish(); }

 private:
  Outcome work(const Task& task);
  bool take(const Outcome& outcome);
  using Documents = std::vector<std::shared_ptr<const fiche::Document>>;
  using Findings = std::vector<std::vector<base::Finding>>;  ///< of each document
  std::vector<lua::MadeFile> made(const Task& task, const Documents& documents, Findings& findings, Outcome& outcome);

  Wish wish_;
  bool all_;
  Surroundings& surroundings_;
  Report& report_;
  Totals& totals_;
  Put put_;
  Crew crew_;
};

}  // namespace tamis::cli

#endif
