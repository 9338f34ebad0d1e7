#ifndef CORE_CLI_CHECKING_H
#define CORE_CLI_CHECKING_H

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/task.h"
#include "core/fiche/document.h"
#include "core/format/format.h"

namespace tamis::cli {

/// A file as read and judged.
struct Checked {
  std::shared_ptr<const fiche::Document> document;  ///< null when it could not be read as a document
  std::vector<base::Finding> findings;              ///< in file order
};
/// Rules of the kitchen's plugins are heard too where the surroundings say so (Surroundings::hear_plugins).
/// With `state` ("tested", "released") a fiche is judged as if that were its state; places stay those of the file.
Checked check_source(const std::shared_ptr<const base::Source>& source, Surroundings& surroundings,
                     std::string_view state = {});
/// The same for what was read already.
Checked check_read(format::Read read, const base::Source& source, Surroundings& surroundings,
                   std::string_view state = {});

/// Finds the files of one path of a command line: itself, or fiche by fiche what stands in the folder. Both say false
/// to stop. A folder that cannot be read, or holds no fiche, is told to `failed`.
using Found = std::function<bool(const std::string& path)>;
using Failed = std::function<bool(const std::string& path, const std::string& why)>;
bool for_each_path(const std::string& named, const Found& found, const Failed& failed);

/// The fault of the kitchen file that stands over a path, when it has one. The kitchen file itself goes through, so
/// that its own findings are said in full.
std::optional<Fault> broken_kitchen(const std::string& path, Surroundings& surroundings);

/// Which plugins are heard for a task: those that have not ended a worker at it.
void hear_for(const Task& task, Surroundings& surroundings);
/// The finding for one of those that have.
base::Finding left_out(const LeftOut& one);
/// Why plugins that a file's kitchen names cannot be used, where they are heard; the others can.
std::vector<Fault> broken_plugins(const std::string& path, Surroundings& surroundings);

/// Works on every path of a command line, file by file. The work says false to stop. A path that cannot be worked on,
/// a folder without fiches, a file that cannot be read and a broken kitchen file are told to `report` and counted as
/// failed.
using SourceWork = std::function<bool(const std::shared_ptr<const base::Source>&)>;
void for_each_source(const std::vector<std::string>& paths, Surroundings& surroundings, Report& report,
                     Totals& totals, const SourceWork& work);

/// The source with every sure fix of the findings put in. Fixes that overlap one already taken wait for the next
/// run.
std::string mended(const base::Source& source, const std::vector<base::Finding>& findings);

}  // namespace tamis::cli

#endif
