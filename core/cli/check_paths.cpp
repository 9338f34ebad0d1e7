#include <memory>
#include <set>
#include <string>
#include <vector>

#include "core/cli/check_file.h"
#include "core/cli/check_run.h"
#include "core/cli/crew.h"
#include "core/cli/files.h"
#include "core/cli/form.h"
#include "core/cli/output.h"
#include "core/cli/plugin_choice.h"
#include "core/cli/progress.h"

namespace tamis::cli {
namespace {

/// The checks of the plugins that the first path's kitchen names.
std::vector<RulePage> plugin_checks(const Request& request, Surroundings& surroundings) {
  std::vector<RulePage> pages;
  const std::string first = request.words.empty() ? "." : request.words.front();
  const std::string path = kind_of(first) == PathKind::folder ? first + "/kitchen.xml" : first;
  for (const KitchenPlugins::Offer& offer : surroundings.plugins(path).offers())
    if (offer.of_kitchen && offer.addition->kind == lua::Addition::Kind::check) pages.push_back(page_of(offer));
  return pages;
}

std::unique_ptr<Form> form_of(const Request& request, Surroundings& surroundings) {
  const std::string form = request.get("report", "text");
  if (form == "json") return json_form();
  if (form == "sarif") return sarif_form(plugin_checks(request, surroundings));
  if (form == "junit") return junit_form(request.has("strict"));
  return text_form({colour_on_output(), output_columns()});
}

CheckFile::Mend mend_of(const Request& request) {
  if (!request.has("mend")) return CheckFile::Mend::no;
  return request.has("write") ? CheckFile::Mend::write : CheckFile::Mend::show;
}

/// Fixes are written one file after another: a fiche is judged with the ones it uses as they then are.
unsigned workers_of(const Request& request) {
  return mend_of(request) == CheckFile::Mend::write ? 1 : jobs_of(request.get("jobs", "1"));
}

class CheckPaths {
 public:
  explicit CheckPaths(const Request& request)
      : request_(request),
        surroundings_(request.get("kitchen")),
        form_(form_of(request, surroundings_)),
        patches_only_(mend_of(request) == CheckFile::Mend::show),
        crew_(workers_of(request), CheckFile(surroundings_, *form_, mend_of(request), request.get("as")),
              [this](Outcome& outcome) { return take(outcome); },
              [this](const Task& task) { return surroundings_.names_plugins(task.path); }) {
    surroundings_.allow(seconds_of(request));
  }

  Exit run() {
    if (!patches_only_) print(form_->start());
    const Found found = [this](const std::string& path) { return crew_.give(task_of(path)); };
    const Failed failed = [this](const std::string& path, const std::string& why) {
      Outcome outcome;
      outcome.path = path;
      outcome.totals.failed = 1;
      outcome.faults.push_back({path, why});
      return crew_.tell(std::move(outcome));
    };
    for (const std::string& path : request_.words)
      if (!for_each_path(path, found, failed)) break;
    crew_.finish();
    if (patches_only_)
      say(count_of(patches_, "file") + " of " + std::to_string(totals_.files) +
          " can be mended; without --mend: " + counted(totals_) + " found");
    else
      form_->end(totals_, exit());
    return exit();
  }

 private:
  /// Standard input can be read here only.
  static Task task_of(const std::string& path) {
    Task task;
    task.path = path;
    if (path != "-") return task;
    const auto source = read_file(path);
    task.held = static_cast<bool>(source);
    if (source)
      task.bytes = (*source)->bytes();
    else
      task.fault = source.fault().message;
    return task;
  }

  [[nodiscard]] Exit exit() const {
    if (totals_.failed > 0) return Exit::failed;
    const bool found = totals_.errors > 0 || (request_.has("strict") && totals_.warnings > 0);
    return found ? Exit::found : Exit::good;
  }

  /// How many files the paths lead to: a walk without reading any.
  [[nodiscard]] std::size_t count() const {
    std::size_t files = 0;
    const Found found = [&](const std::string&) { return ++files > 0; };
    const Failed failed = [](const std::string&, const std::string&) { return true; };
    for (const std::string& path : request_.words) for_each_path(path, found, failed);
    return files;
  }

  bool take(Outcome& outcome) {
    progress_.step();
    // A file that was checked, but not with all its kitchen has: what could not be used counts, once.
    const bool lacking = outcome.totals.files > 0 && outcome.totals.failed > 0;
    if (lacking) outcome.totals.failed = 0;
    totals_.add(outcome.totals);
    if (outcome.mendable) ++patches_;
    for (const Fault& fault : outcome.faults)
      if (tell(fault) && lacking) ++totals_.failed;
    talk(outcome.talk);
    if (!outcome.said.empty()) say(outcome.said);
    if (outcome.totals.files > 0) {
      put(outcome.part);
      form_->done(outcome.path, "");
    }
    return !output_gone();
  }

  /// False when it was told before.
  bool tell(const Fault& fault) {
    if (fault.once && !told_.insert(fault.path + ": " + fault.why).second) return false;
    complain(fault.path + ": " + fault.why);
    if (patches_only_) return true;
    put(form_->failed(fault.path, fault.why));
    form_->done(fault.path, fault.why);
    return true;
  }

  void put(const std::string& part) {
    if (part.empty()) return;
    if (!patches_only_) print(form_->before(first_));
    first_ = false;
    print(part);
  }

  const Request& request_;
  Surroundings surroundings_;
  std::unique_ptr<Form> form_;
  bool patches_only_;
  bool first_ = true;
  Totals totals_;
  std::size_t patches_ = 0;
  std::set<std::string> told_;
  Progress progress_{"file", [this] { return count(); }};
  Crew crew_;
};

}  // namespace

Exit check_paths(const Request& request) { return CheckPaths(request).run(); }

}  // namespace tamis::cli
