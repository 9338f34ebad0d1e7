#include "core/cli/plugin_tests.h"

#include <unistd.h>

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "core/cli/crew.h"
#include "core/cli/diff.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/plugin_files.h"
#include "core/cli/plugin_trial.h"
#include "core/cli/report.h"

namespace tamis::cli {
namespace {

constexpr std::size_t most_lines = 40;

/// What differs, a line of the expected behind "-" and one of the made behind "+", set in.
std::string difference(const std::string& path, const std::string& expected, const std::string& made) {
  constexpr std::size_t none = std::string::npos;
  if (base::find_invalid_utf8(expected) != none || base::find_invalid_utf8(made) != none) {
    const auto at = std::mismatch(expected.begin(), expected.end(), made.begin(), made.end()).first - expected.begin();
    return "    they part at byte " + std::to_string(at + 1) + ": " + std::to_string(expected.size()) +
           " bytes expected, " + std::to_string(made.size()) + " made\n";
  }
  std::string out;
  std::size_t lines = 0;
  const std::string diff = unified_diff(path, expected, made);
  for (std::size_t at = 0; at < diff.size();) {
    const std::size_t end = std::min(diff.find('\n', at), diff.size());
    ++lines;
    if (lines > 2 && lines <= most_lines) out += "    " + diff.substr(at, end - at) + "\n";  // the names are told above
    at = end + 1;
  }
  if (lines > most_lines) out += "    … and " + count_of(lines - most_lines, "line") + " more\n";
  return out;
}

class PluginTests {
 public:
  PluginTests(std::string folder, bool renew, Totals& totals) : folder_(std::move(folder)), renew_(renew), totals_(totals) {}

  void run() {
    auto files = read_plugin_files(folder_);
    if (!files) return cannot(files.fault().message);
    files_ = *std::move(files);
    std::vector<base::Finding> faults;
    manifest_ = lua::read_manifest(files_.manifest, faults);
    for (const base::Finding& fault : faults) cannot_load(*files_.manifest, fault);
    if (!faults.empty() || !loads()) return;
    std::vector<std::string> missing;
    cases_ = read_plugin_cases(folder_, manifest_, missing);
    for (const std::string& what : missing) wrong(what);
    if (!renew_) tell_untried();
    for (const lua::Addition& addition : manifest_.additions)
      if (!addition.wrong.empty()) examples_.push_back(&addition);
    std::size_t failing = 0;
    Crew crew(2, [this](const Task& task) { return one_task(task); }, [&](Outcome& outcome) {
      print(outcome.part);
      for (const Fault& fault : outcome.faults) cannot(fault.path + ": " + fault.why);
      if (outcome.totals.errors > 0) ++failing;
      totals_.add(outcome.totals);
      return !output_gone();
    });
    for (std::size_t i = 0; i < examples_.size() + cases_.size(); ++i) {
      Task task;
      task.path = i < examples_.size() ? files_.manifest->path() : cases_[i - examples_.size()].folder;
      task.line = i;
      if (!crew.give(std::move(task))) break;
    }
    crew.finish();
    std::string told = manifest_.id + " " + manifest_.version + ": " + count_of(cases_.size(), "test") + ", ";
    if (!examples_.empty()) told += count_of(examples_.size(), "pair") + " of examples, ";
    if (cases_.empty() && examples_.empty())
      told += missing.empty() ? "nothing to test" : "nothing tested";
    else
      told += failing == 0 ? "as expected" : std::to_string(failing) + " not as expected";
    print(harmless(told + "\n"));
  }

 private:
  void cannot(const std::string& why) {
    ++totals_.failed;
    complain(harmless(why));
  }

  void cannot_load(const base::Source& source, const base::Finding& fault) {
    const base::Place place = source.place(fault.where.begin);
    cannot(source.path() + ":" + std::to_string(place.line) + ":" + std::to_string(place.column) + ": " + fault.message +
           (fault.advice.empty() ? "" : "; " + fault.advice));
  }

  void wrong(const std::string& what) {
    ++totals_.errors;
    print(harmless(what + "\n"));
  }

  bool loads() {
    std::vector<lua::LoadFault> faults;
    const bool good = lua::Plugin::load(files_, manifest_, lua::standard_settings(manifest_), faults) != nullptr;
    for (const lua::LoadFault& fault : faults) cannot_load(*fault.source, fault.finding);
    return good;
  }

  /// Something the plugin adds, and no test says what is expected of it.
  void tell_untried() {
    bool told = false;
    for (const lua::Addition& addition : manifest_.additions) {
      using Kind = lua::Addition::Kind;
      const bool tried = std::any_of(cases_.begin(), cases_.end(), [&](const auto& one) { return expects(one, addition); });
      const bool check = addition.kind == Kind::check;
      if (tried || cases_.empty() || (check && told)) continue;
      told = told || check;
      const std::string_view ending = check ? "" : addition.kind == Kind::conversion ? ".fiche.xml" : "/";
      wrong(folder_ + "/tests: none says what is expected of the " + std::string(lua::kind_name(addition.kind)) + " " +
            addition.id + ", in " + place_of(addition) + std::string(ending));
    }
  }

  Outcome one_task(const Task& task) {
    Outcome outcome;
    outcome.path = task.path;
    std::string told;
    if (!task.fault.empty())
      told = task.path + ": " + task.fault + "\n";
    else if (task.line < examples_.size())
      told = tried_examples(files_, manifest_, *examples_[task.line]);
    else
      told = tried(cases_[task.line - examples_.size()], outcome);
    if (!told.empty()) ++outcome.totals.errors;
    outcome.part += harmless(told);
    return outcome;
  }

  /// What is not as expected.
  std::string tried(const PluginCase& one, Outcome& outcome) const {
    std::string told;
    for (const std::string& fault : one.faults) told += fault + "\n";
    const bool asks = !manifest_.additions.empty();
    if (asks && one.expected.empty() && one.faults.empty() && !renew_)
      told += one.folder + ": says nothing of what is expected; \"tamis plugins test --renew\" writes what the plugin "
                           "makes now\n";
    if (told.empty()) {
      const Trial trial = try_case(files_, manifest_, one, one.expected.empty());
      for (const std::string& fault : trial.faults) told += fault + "\n";
      if (trial.faults.empty() && renew_) renew(one, trial.made, outcome, told);
      if (trial.faults.empty() && !renew_) told += compared(one, trial.made);
    }
    return told;
  }

  static std::string compared(const PluginCase& one, const CaseFiles& made) {
    std::string told;
    for (const auto& [path, bytes] : one.expected) {
      const auto found = made.find(path);
      const std::string full = one.folder + "/" + path;
      if (found == made.end()) {
        told += full + ": is expected, and was not made\n";
      } else if (found->second != bytes && !(bytes.empty() && found->second == "nothing\n")) {
        told += full + ": is not what was made (- expected, + made)\n" + difference(full, bytes, found->second);
      }
    }
    for (const auto& [path, bytes] : made)
      if (one.expected.find(path) == one.expected.end())
        told += one.folder + "/" + path + ": was made, and is not expected\n" + difference(path, "", bytes);
    return told;
  }

  /// What was made becomes what is expected; files that are no longer made go.
  static void renew(const PluginCase& one, const CaseFiles& made, Outcome& outcome, std::string& told) {
    for (const auto& [path, bytes] : made) {
      const auto before = one.expected.find(path);
      if (before != one.expected.end() && before->second == bytes) continue;
      const std::string full = one.folder + "/" + path;
      std::string why = make_folders(folder_of(full));
      if (why.empty()) why = write_file(full, bytes);
      if (why.empty())
        outcome.part += harmless("wrote " + full + "\n");
      else
        told += full + ": cannot be written: " + why + "\n";
    }
    for (const auto& [path, bytes] : one.expected) {
      const std::string full = one.folder + "/" + path;
      if (made.find(path) != made.end()) continue;
      if (::unlink(full.c_str()) == 0)
        outcome.part += harmless("took away " + full + "\n");
      else
        told += full + ": cannot be taken away: " + reason(errno) + "\n";
    }
  }

  std::string folder_;
  bool renew_;
  Totals& totals_;
  lua::PluginFiles files_;
  lua::Manifest manifest_;
  std::vector<const lua::Addition*> examples_;  ///< checks that have them
  std::vector<PluginCase> cases_;
};

bool is_plugin(const std::string& folder) { return kind_of(folder + "/plugin.xml") == PathKind::file; }

/// The plugin at the path, or those in the folders below it, so many levels down. Empty when there is none.
std::vector<std::string> plugins_at(std::string path, int levels = 4) {
  while (path.size() > 1 && path.ends_with('/')) path.pop_back();
  if (is_plugin(path)) return {path};
  std::vector<std::string> folders, names;
  if (levels == 0 || names_in(path, names) != 0) return folders;
  for (const std::string& name : names) {
    const std::string below = path == "." ? name : path + "/" + name;
    if (kind_of(below) != PathKind::folder) continue;
    for (std::string& one : plugins_at(below, levels - 1)) folders.push_back(std::move(one));
  }
  return folders;
}

}  // namespace

Exit test_plugins(const Request& request) {
  Totals totals;
  for (std::size_t i = 1; i < request.words.size() && !output_gone(); ++i) {
    const std::string& path = request.words[i];
    const std::vector<std::string> folders = plugins_at(path);
    if (folders.empty()) {
      ++totals.failed;
      complain(harmless(path) + (kind_of(path) == PathKind::folder ? ": holds no plugin.xml, nor does a folder below it"
                                                                   : ": there is no such folder"));
    }
    for (const std::string& folder : folders) PluginTests(folder, request.has("renew"), totals).run();
  }
  return totals.exit();
}

}  // namespace tamis::cli
