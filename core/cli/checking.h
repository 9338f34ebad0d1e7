#ifndef CORE_CLI_CHECKING_H
#define CORE_CLI_CHECKING_H

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/fiche/document.h"

namespace tamis::cli {

/// A file as read and judged.
struct Checked {
  std::shared_ptr<const fiche::Document> document;  ///< null when it could not be read as a document
  std::vector<base::Finding> findings;              ///< in file order
};
/// With `state` ("tested", "released") a fiche is judged as if that were its state; places stay those of the file.
Checked check_source(const std::shared_ptr<const base::Source>& source, Surroundings& surroundings,
                     std::string_view state = {});

/// Works on every path of a command line: files as named, folders fiche by fiche. The work says false to stop.
/// A path that cannot be worked on, a folder without fiches, a file that cannot be read and a broken kitchen file
/// are told to `report` and counted as failed.
using Work = std::function<bool(const std::shared_ptr<const base::Source>&)>;
void for_each_source(const std::vector<std::string>& paths, Surroundings& surroundings, Report& report,
                     Totals& totals, const Work& work);

/// The source with every sure fix of the findings put in. Fixes that overlap one already taken wait for the next
/// run.
std::string mended(const base::Source& source, const std::vector<base::Finding>& findings);

}  // namespace tamis::cli

#endif
