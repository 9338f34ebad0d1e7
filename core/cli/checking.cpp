#include "core/cli/checking.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/format/format.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

bool touches(const base::Edit& a, const base::Edit& b) {
  if (a.where == b.where) return true;
  return a.where.begin < b.where.end && b.where.begin < a.where.end;
}

bool fits(const std::vector<base::Edit>& taken, const std::vector<base::Edit>& wanted) {
  for (std::size_t i = 1; i < wanted.size(); ++i)
    if (std::any_of(wanted.begin(), wanted.begin() + static_cast<std::ptrdiff_t>(i),
                    [&](const base::Edit& other) { return touches(wanted[i], other); }))
      return false;
  return std::none_of(wanted.begin(), wanted.end(), [&taken](const base::Edit& edit) {
    return std::any_of(taken.begin(), taken.end(),
                       [&edit](const base::Edit& other) { return touches(edit, other); });
  });
}

std::vector<base::Finding> judged(const fiche::Document& document, const base::Source& source,
                                  Surroundings& surroundings, std::string_view state) {
  const fiche::Kitchen& kitchen = *surroundings.of(source.path()).kitchen;
  fiche::Library& library = surroundings.library(source.path());
  rules::MoreRules* more = surroundings.hears_plugins() ? surroundings.plugins(source.path()).checks() : nullptr;
  const bool is_fiche = document.root() != fiche::none && document.el(document.root()) == fiche::El::fiche;
  if (state.empty() || !is_fiche)
    return rules::check(document, kitchen, library, more);
  fiche::Document supposed = document.clone();
  supposed.set_attribute(supposed.root(), fiche::At::state, state);
  return rules::check(supposed, kitchen, library, more);
}

}  // namespace

Checked check_source(const std::shared_ptr<const base::Source>& source, Surroundings& surroundings,
                     std::string_view state) {
  return check_read(format::read(source), *source, surroundings, state);
}

Checked check_read(format::Read read, const base::Source& source, Surroundings& surroundings,
                   std::string_view state) {
  Checked checked{read.document, std::move(read.findings)};
  if (read.document != nullptr) {
    auto more = judged(*read.document, source, surroundings, state);
    std::move(more.begin(), more.end(), std::back_inserter(checked.findings));
    base::sort_by_place(checked.findings);
  }
  return checked;
}

bool for_each_path(const std::string& named, const Found& found, const Failed& failed) {
  if (named == "-" || kind_of(named) != PathKind::folder) return found(named);
  bool any = false;
  bool wanted = true;
  const bool on = walk(
      named,
      [&](const std::string& path) {
        any = any || is_fiche_name(path);
        return wanted && found(path);
      },
      [&](const std::string& folder, const std::string& why) {
        any = true;
        wanted = failed(folder, "cannot be read: " + why) && wanted;
      });
  if (!on || !wanted) return false;
  return any || failed(named, "holds no fiche (a file that ends in .fiche.xml or .fiche.json)");
}

std::optional<Fault> broken_kitchen(const std::string& path, Surroundings& surroundings) {
  const Around& around = surroundings.of(path);
  if (around.fault.empty() || real_path(around.kitchen_path) == real_path(path)) return std::nullopt;
  return Fault{around.kitchen_path, "the kitchen file cannot be used: " + around.fault, true};
}

void hear_for(const Task& task, Surroundings& surroundings) {
  surroundings.hear_plugins(task.deaths == 0);
  std::vector<std::string> ids;
  for (const LeftOut& one : task.without) ids.push_back(one.plugin);
  surroundings.leave_out(std::move(ids));
}

base::Finding left_out(const LeftOut& one) {
  base::Finding made;
  made.rule = "plugin-error";
  made.severity = base::Severity::error;
  made.message = "plugin " + one.plugin + " " + one.why + "; this was done without it";
  made.advice = "mend the plugin; what else it would have found here is not known";
  made.source = "plugin " + one.plugin;
  return made;
}

std::vector<Fault> broken_plugins(const std::string& path, Surroundings& surroundings) {
  std::vector<Fault> faults;
  const Around& around = surroundings.of(path);
  if (!surroundings.hears_plugins() || real_path(around.kitchen_path) == real_path(path)) return faults;
  for (const KitchenPlugins::Broken& broken : surroundings.plugins(path).broken())
    faults.push_back({broken.path, "a plugin cannot be loaded: " + broken.why, true});
  return faults;
}

void for_each_source(const std::vector<std::string>& paths, Surroundings& surroundings, Report& report,
                     Totals& totals, const SourceWork& work) {
  std::set<std::string> told;
  const auto fail = [&](const std::string& path, const std::string& why) {
    ++totals.failed;
    report.failed(path, why);
    return true;
  };
  const auto file = [&](const std::string& path) {
    if (output_gone()) return false;
    const auto source = read_file(path);
    if (!source) return fail(path, source.fault().message);
    const auto broken = broken_kitchen(path, surroundings);
    if (!broken) return work(*source);
    ++totals.failed;
    if (told.insert(broken->path).second) report.failed(broken->path, broken->why);
    return true;
  };
  for (const std::string& path : paths)
    if (!for_each_path(path, file, fail)) return;
}

std::string mended(const base::Source& source, const std::vector<base::Finding>& findings) {
  std::vector<base::Edit> edits;
  for (const base::Finding& finding : findings)
    if (fits(edits, finding.edits)) edits.insert(edits.end(), finding.edits.begin(), finding.edits.end());
  std::stable_sort(edits.begin(), edits.end(),
                   [](const base::Edit& a, const base::Edit& b) { return a.where.begin < b.where.begin; });
  std::string out;
  std::size_t at = 0;
  for (const base::Edit& edit : edits) {
    out.append(source.bytes(), at, edit.where.begin - at);
    out += edit.text;
    at = edit.where.end;
  }
  return out.append(source.bytes(), at);
}

}  // namespace tamis::cli
