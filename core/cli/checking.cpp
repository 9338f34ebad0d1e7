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
  return std::none_of(wanted.begin(), wanted.end(), [&taken](const base::Edit& edit) {
    return std::any_of(taken.begin(), taken.end(),
                       [&edit](const base::Edit& other) { return touches(edit, other); });
  });
}

std::vector<base::Finding> judged(const fiche::Document& document, const base::Source& source,
                                  Surroundings& surroundings, std::string_view state) {
  const fiche::Kitchen& kitchen = *surroundings.of(source.path()).kitchen;
  fiche::Library& library = surroundings.library(source.path());
  const bool is_fiche = document.root() != fiche::none && document.el(document.root()) == fiche::El::fiche;
  if (state.empty() || !is_fiche)
    return rules::check(document, kitchen, library);
  fiche::Document supposed = document.clone();
  supposed.set_attribute(supposed.root(), fiche::At::state, state);
  return rules::check(supposed, kitchen, library);
}

/// One run over the paths of a command line.
class Walk {
 public:
  Walk(Surroundings& surroundings, Report& report, Totals& totals, const Work& work)
      : surroundings_(surroundings), report_(report), totals_(totals), work_(work) {}

  bool path(const std::string& named) {
    if (named == "-" || kind_of(named) != PathKind::folder) return file(named);
    bool any = false;
    const bool on = walk(
        named,
        [&](const std::string& found) {
          any = any || is_fiche_name(found);
          return file(found);
        },
        [&](const std::string& folder, const std::string& why) {
          any = true;
          fail(folder, "cannot be read: " + why);
        });
    if (on && !any) fail(named, "holds no fiche (a file that ends in .fiche.xml or .fiche.json)");
    return on;
  }

 private:
  void fail(const std::string& path, const std::string& why) {
    ++totals_.failed;
    report_.failed(path, why);
  }

  bool file(const std::string& path) {
    if (output_gone()) return false;
    const auto source = read_file(path);
    if (!source) {
      fail(path, source.fault().message);
      return true;
    }
    if (kitchen_is_broken(path)) return true;
    return work_(*source);
  }

  /// The kitchen file itself goes through, so that its own findings are said in full.
  bool kitchen_is_broken(const std::string& path) {
    const Around& around = surroundings_.of(path);
    if (around.fault.empty() || real_path(around.kitchen_path) == real_path(path)) return false;
    if (broken_.insert(around.kitchen_path).second)
      report_.failed(around.kitchen_path, "the kitchen file cannot be used: " + around.fault);
    ++totals_.failed;
    return true;
  }

  Surroundings& surroundings_;
  Report& report_;
  Totals& totals_;
  const Work& work_;
  std::set<std::string> broken_;
};

}  // namespace

Checked check_source(const std::shared_ptr<const base::Source>& source, Surroundings& surroundings,
                     std::string_view state) {
  format::Read read = format::read(source);
  Checked checked{read.document, std::move(read.findings)};
  if (read.document != nullptr) {
    auto more = judged(*read.document, *source, surroundings, state);
    std::move(more.begin(), more.end(), std::back_inserter(checked.findings));
    base::sort_by_place(checked.findings);
  }
  return checked;
}

void for_each_source(const std::vector<std::string>& paths, Surroundings& surroundings, Report& report,
                     Totals& totals, const Work& work) {
  Walk walk(surroundings, report, totals, work);
  for (const std::string& path : paths)
    if (!walk.path(path)) return;
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
