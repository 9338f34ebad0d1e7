#ifndef CORE_CLI_CHECK_FILE_H
#define CORE_CLI_CHECK_FILE_H

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/base/source.h"
#include "core/cli/checking.h"
#include "core/cli/form.h"
#include "core/cli/surroundings.h"
#include "core/cli/task.h"

namespace tamis::cli {

/// The work of `check` on one file: read, judge, mend where asked, and spell its part of the report. Uses nothing
/// but what it was made with and the files it reads, so that it can run in any process.
class CheckFile {
 public:
  enum class Mend : unsigned char { no, show, write };

  CheckFile(Surroundings& surroundings, const Form& form, Mend mend, std::string state)
      : surroundings_(surroundings), form_(form), mend_(mend), state_(std::move(state)) {}

  Outcome operator()(const Task& task);

 private:
  bool look_around(const Task& task, Outcome& outcome);
  std::vector<base::Finding> judge(const std::shared_ptr<const base::Source>& source, Outcome& outcome);
  std::string mended_bytes(std::shared_ptr<const base::Source> source);
  void show_patch(const std::shared_ptr<const base::Source>& source, Outcome& outcome);
  std::shared_ptr<const base::Source> mend(const std::shared_ptr<const base::Source>& source, Outcome& outcome);

  Surroundings& surroundings_;
  const Form& form_;
  Mend mend_;
  std::uint64_t deaths_ = 0;  ///< of the task at hand
  std::vector<LeftOut> without_;  ///< plugins it is judged without
  std::string state_;  ///< judged as if in this state; "": in its own
};

}  // namespace tamis::cli

#endif
