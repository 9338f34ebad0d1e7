#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <set>
#include <string>
#include <utility>

#include "core/base/utf8.h"
#include "core/cli/check_run.h"
#include "core/cli/checking.h"
#include "core/cli/crew.h"
#include "core/cli/files.h"
#include "core/cli/finding_json.h"
#include "core/cli/json_text.h"
#include "core/cli/line_reader.h"
#include "core/cli/output.h"
#include "core/cli/plugin_choice.h"
#include "core/cli/progress.h"
#include "core/cli/surroundings.h"
#include "core/format/format.h"

// The record is "record" in schemas/report.schema.json.

namespace tamis::cli {
namespace {

std::string id_json(const Checked& checked) {
  if (checked.document == nullptr) return "null";
  const std::string_view id = checked.document->get(checked.document->root(), fiche::At::id);
  return id.empty() ? "null" : json_string(id);
}

/// The work on one line: a fiche in JSON, or why it is none.
class CheckLine {
 public:
  CheckLine(Surroundings& surroundings, std::string state) : surroundings_(surroundings), state_(std::move(state)) {}

  Outcome operator()(const Task& task) {
    Outcome outcome;
    outcome.path = task.path;
    std::string fault = task.fault;
    if (fault.empty() && base::trimmed(task.bytes).empty()) fault = "the line is empty";
    hear_for(task, surroundings_);
    for (Fault& broken : broken_plugins(task.path, surroundings_)) outcome.faults.push_back(std::move(broken));
    {
      JsonList record(outcome.part, '{', '}');
      record.text("path", task.path);
      record.member("line", std::to_string(task.line));
      if (fault.empty())
        add_judged(record, task, outcome);
      else
        add_fault(record, fault, outcome);
    }
    outcome.part += '\n';
    return outcome;
  }

 private:
  static void add_fault(JsonList& record, const std::string& fault, Outcome& outcome) {
    record.member("id", "null");
    record.text("failed", fault);
    record.member("findings", "[]");
    outcome.totals.failed = 1;
  }

  void add_judged(JsonList& record, const Task& task, Outcome& outcome) {
    const auto source = std::make_shared<const base::Source>(task.path, task.bytes);
    Checked checked = check_read(format::read_json(source), *source, surroundings_, state_);
    for (const LeftOut& one : task.without) checked.findings.push_back(left_out(one));
    outcome.talk = harmless(surroundings_.take_talk(task.path));
    outcome.totals.files = 1;
    outcome.totals.add(checked.findings);
    record.member("id", id_json(checked));
    record.begin("findings");
    append_findings(outcome.part, *source, checked.findings, " ");
  }

  Surroundings& surroundings_;
  std::string state_;
};

class CheckLines {
 public:
  explicit CheckLines(const Request& request)
      : request_(request),
        surroundings_(request.get("kitchen")),
        crew_(jobs_of(request.get("jobs", "1")), CheckLine(surroundings_, request.get("as")),
              [this](Outcome& outcome) { return take(outcome); },
              [this](const Task& task) { return surroundings_.names_plugins(task.path); }) {
    surroundings_.allow(seconds_of(request));
  }

  Exit run() {
    bool all = true;
    if (request_.words.empty()) all = input("-");
    for (const std::string& path : request_.words) all = input(path) && all;
    crew_.finish();
    std::string line = count_of(totals_.files + totals_.failed, "line") + " read: " + counted(totals_) + " found";
    if (totals_.failed > 0) line += "; " + std::to_string(totals_.failed) + " could not be checked";
    say(line);
    return all && !lacking_ ? Exit::good : Exit::failed;
  }

 private:
  bool take(const Outcome& outcome) {
    progress_.step();
    totals_.add(outcome.totals);
    for (const Fault& fault : outcome.faults) {
      lacking_ = true;
      if (told_.insert(fault.path + ": " + fault.why).second) complain(fault.path + ": " + fault.why);
    }
    talk(outcome.talk);
    print(outcome.part);
    return !output_gone();
  }

  /// False when not every line of it could be read.
  bool input(const std::string& path) {
    if (const auto broken = broken_kitchen(path, surroundings_)) return refuse(broken->path, broken->why);
    if (path == "-") return lines(STDIN_FILENO, path);
    if (kind_of(path) == PathKind::folder) return refuse(path, "cannot be read: it is a folder");
    const int opened = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (opened < 0) return refuse(path, "cannot be read: " + reason(errno));
    const bool all = lines(opened, path);
    ::close(opened);
    return all;
  }

  static bool refuse(const std::string& path, const std::string& why) {
    complain(path + ": " + why);
    return false;
  }

  bool lines(int descriptor, const std::string& path) {
    LineReader reader(descriptor, format::most_bytes);
    for (std::uint64_t number = 1;; ++number) {
      Task task;
      task.path = path;
      task.line = number;
      task.held = true;
      // Whoever waits for an answer before it writes the next line gets it.
      if (reader.must_read()) crew_.wait_for(descriptor);
      const LineReader::Got got = reader.next(task.bytes);
      if (got == LineReader::Got::end) return true;
      if (got == LineReader::Got::fault) return refuse(path, "cannot be read: " + reason(reader.fault()));
      if (got == LineReader::Got::too_long)
        task.fault = "the line is longer than " + std::to_string(format::most_bytes >> 20U) + " MB";
      if (!crew_.give(std::move(task))) return true;
    }
  }

  const Request& request_;
  Surroundings surroundings_;
  Totals totals_;
  bool lacking_ = false;       ///< a plugin could not be used
  std::set<std::string> told_;
  Progress progress_{"line", nullptr};
  Crew crew_;
};

}  // namespace

Exit check_lines(const Request& request) { return CheckLines(request).run(); }

}  // namespace tamis::cli
