#ifndef CORE_CLI_FORM_H
#define CORE_CLI_FORM_H

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/cli/report.h"
#include "core/cli/rule_pages.h"
#include "core/cli/verb.h"

namespace tamis::cli {

/// How a report is spelled: parts, one a file, put together in the order of the files. A part depends on its file
/// alone, so that any process can make it; what stands before, between and after them is said where they come
/// together. No form keeps more of a file than its place in the closing lists, and that on the disk (Spool).
class Form {
 public:
  Form() = default;
  Form(const Form&) = delete;
  Form& operator=(const Form&) = delete;
  virtual ~Form() = default;

  /// The part of a file that was checked; "" when it has none.
  [[nodiscard]] virtual std::string file(const base::Source& source,
                                         const std::vector<base::Finding>& findings) const = 0;
  /// The part of a path that could not be.
  [[nodiscard]] virtual std::string failed(const std::string& path, const std::string& why) const;

  [[nodiscard]] virtual std::string start() const;
  /// What stands before a part: the first, or a further one.
  [[nodiscard]] virtual std::string_view before(bool first) const = 0;
  /// Told of each path in turn; `why` is "" for one that was checked.
  virtual void done(const std::string& path, const std::string& why);
  /// Prints what closes the report.
  virtual void end(const Totals& totals, Exit exit) = 0;
};

/// How findings look to people: in colour or not, and how wide.
struct Look {
  bool colour = false;
  std::size_t columns = 80;
};

/// Lines for people; the closing count goes to standard error.
std::unique_ptr<Form> text_form(Look look);
/// One JSON document (schemas/report.schema.json).
std::unique_ptr<Form> json_form();
/// SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format), with the checks of plugins among its rules.
std::unique_ptr<Form> sarif_form(std::vector<RulePage> plugin_checks);
/// JUnit XML as build servers read it; a warning is a failure too when `strict`.
std::unique_ptr<Form> junit_form(bool strict);

}  // namespace tamis::cli

#endif
