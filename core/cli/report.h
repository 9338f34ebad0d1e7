#ifndef CORE_CLI_REPORT_H
#define CORE_CLI_REPORT_H

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/cli/verb.h"

namespace tamis::cli {

/// What a run found, counted.
struct Totals {
  std::size_t files = 0;   ///< files that were read and judged
  std::size_t failed = 0;  ///< files or folders that could not be
  std::size_t errors = 0, warnings = 0, advice = 0;
  std::size_t mendable = 0;  ///< findings with a sure fix
  void add(const std::vector<base::Finding>& findings);
  void add(const Totals& more);
  /// Of a verb that makes something: what could not be done, else whether anything wrong was found.
  [[nodiscard]] Exit exit() const { return failed > 0 ? Exit::failed : errors > 0 ? Exit::found : Exit::good; }
  [[nodiscard]] std::size_t findings() const { return errors + warnings + advice; }
};

/// Says what was found, file by file as the run goes; keeps nothing of a file once it is said.
class Report {
 public:
  virtual ~Report() = default;
  virtual void file(const base::Source& source, const std::vector<base::Finding>& findings) = 0;
  /// The two halves of file(), which may be in two processes: the text, and saying it.
  [[nodiscard]] virtual std::string spelled(const base::Source& source, const std::vector<base::Finding>& findings) const = 0;
  virtual void part(const std::string& text) = 0;
  /// A path whose work could not be done, and why.
  virtual void failed(const std::string& path, const std::string& why) = 0;
};

/// Lines for people on standard error, where standard output holds the result itself. (What `check` prints on
/// standard output is a Form.)
std::unique_ptr<Report> talk_report();

/// "1 error", "3 errors".
std::string count_of(std::size_t count, std::string_view what);
/// "2 errors, 1 warning"; "nothing" when there are none.
std::string counted(const Totals& totals);

}  // namespace tamis::cli

#endif
