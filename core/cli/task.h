#ifndef CORE_CLI_TASK_H
#define CORE_CLI_TASK_H

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "core/cli/report.h"

namespace tamis::cli {

/// A plugin that a piece of work is done without, because it ended the worker before.
struct LeftOut {
  std::string plugin;  ///< its id
  std::string why;     ///< "took longer than its 10 seconds and was ended"
};

/// One whole piece of work: a file, or a line of a stream.
struct Task {
  std::string path;
  bool held = false;       ///< `bytes` are what is to be worked on; else the file at `path` is
  std::string bytes;
  std::uint64_t line = 0;  ///< number of the line it is, from 1; 0 for a file
  std::string fault;       ///< why it cannot be worked on; the work then only tells that
  /// How many workers have died at it, and not in a plugin: the work may leave out what could kill another.
  std::uint64_t deaths = 0;
  std::vector<LeftOut> without;
};

/// A path whose work could not be done, and why.
struct Fault {
  std::string path;
  std::string why;
  bool once = false;  ///< said for the first of all tasks that meet it (a kitchen file over many fiches)
};

/// What came of a task.
struct Outcome {
  std::string path;
  std::string part;  ///< its part of the report
  std::vector<Fault> faults;
  Totals totals;
  bool mendable = false;  ///< `part` is a patch
  std::string said;       ///< a line for standard error
  std::string talk;       ///< what plugins printed
};

/// The work itself: depends on the task and on what was there before the first, so any process can do it.
using Work = std::function<Outcome(const Task&)>;

/// Both as bytes for a pipe between processes of one program. Read back only what was spelled so.
std::string spelled(const Task& task);
std::string spelled(const Outcome& outcome);
Task read_task(std::string_view bytes);
Outcome read_outcome(std::string_view bytes);

}  // namespace tamis::cli

#endif
