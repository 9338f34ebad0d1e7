#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <memory>
#include <string>
#include <vector>

#include "core/cli/checking.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/plugin_choice.h"
#include "core/cli/plugin_work.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"as", 'a', "NAME", "what to make; listed when not given", ""},
    Option{"to", 't', "FOLDER", "put the files into this folder, which is made if need be", "FOLDER"},
    Option{"write", 'w', "FILE", "write the one file of one fiche here, over what is there", "FILE"},
    Option{"replace", 0, "", "with --to: write over files of the same name", ""},
    Option{"set", 0, "NAME=VALUE", "a setting of the plugin, over the kitchen's; more of them with ; between", ""},
    Option{"seconds", 0, "N", "how long a plugin may work on one fiche: 10 when not given", ""},
    Option{"kitchen", 'k', "FILE", "export for this kitchen, not the kitchen.xml found above each fiche", "FILE"},
};

constexpr std::string_view help =
    R"(An export is what a plugin makes of a fiche: a sheet to print, a page, a list. Some are made
of all fiches together: the order for a week.
Without --to and --write the one file of one fiche goes to standard output.
)";

bool names_many(const Request& request) {
  return request.words.size() > 1 || kind_of(request.words.front()) == PathKind::folder;
}

/// What a plugin names is put into the folder itself, not where a link of that name leads.
bool is_link(const std::string& path) {
  struct stat about {};
  return ::lstat(path.c_str(), &about) == 0 && S_ISLNK(about.st_mode);
}

class Export {
 public:
  explicit Export(const Request& request) : request_(request), surroundings_(request.get("kitchen")) {}

  Exit run() {
    surroundings_.allow(seconds_of(request_));
    PluginWork work({lua::Addition::Kind::export_, request_.get("as"), request_.get("set")}, false, surroundings_, *report_,
                    totals_, [this](const std::string& path, const auto& files) { put(path, files); });
    for_each_source(request_.words, surroundings_, *report_, totals_, [&](const auto& source) {
      one(source, work);
      return !output_gone() && totals_.failed == 0;
    });
    work.finish();
    if (!together_.empty() && totals_.failed == 0 && totals_.errors == 0) {
      work.give(together_);
      work.finish();
    }
    return totals_.exit();
  }

 private:
  void fail(const std::string& path, const std::string& why) {
    ++totals_.failed;
    report_->failed(path, why);
  }

  void one(const std::shared_ptr<const base::Source>& source, PluginWork& work) {
    const format::Read read = format::read(source);
    if (read.document == nullptr) {
      report_->file(*source, read.findings);
      return totals_.add(read.findings);
    }
    if (read.document->el(read.document->root()) != fiche::El::fiche) return;  // a kitchen file is no recipe
    if (is_over_all(source->path())) return keep(source);
    if (!request_.has("to") && names_many(request_))
      return fail(source->path(), "is not the only fiche named: more than one makes more than one file; add --to FOLDER");
    work.give({source});
  }

  /// Whether the export is made of all fiches together. Runs nothing of the plugin.
  bool is_over_all(const std::string& path) {
    for (const KitchenPlugins::Offer& offer : surroundings_.plugins(path).offers())
      if (offer.addition->kind == lua::Addition::Kind::export_ && offer.addition->id == request_.get("as"))
        return offer.addition->over_all;
    return false;
  }

  void keep(const std::shared_ptr<const base::Source>& source) {
    const std::string& path = source->path();
    if (!together_.empty() && surroundings_.of(path).kitchen_path != kitchen_path_)
      return fail(path, "is of another kitchen than " + together_.front()->path() + "; say with --kitchen for which one");
    kitchen_path_ = surroundings_.of(path).kitchen_path;
    together_.push_back(source);
  }

  void put(const std::string& path, const std::vector<lua::MadeFile>& files) {
    if (files.empty() && totals_.errors == 0) return fail(path, "gives no file; what is said above must be put right first");
    if (request_.has("to")) {
      for (const lua::MadeFile& file : files) put_into_folder(request_.get("to"), file);
    } else if (files.size() > 1) {
      fail(path, "makes " + count_of(files.size(), "file") + "; say where with --to FOLDER");
    } else if (!files.empty()) {
      request_.has("write") ? write(request_.get("write"), files.front().bytes) : print(files.front().bytes);
    }
  }

  void put_into_folder(const std::string& folder, const lua::MadeFile& file) {
    const std::string target = folder + "/" + file.name;
    if (const std::string why = make_folders(folder); !why.empty()) return fail(folder, "cannot be made: " + why);
    const bool ours = std::find(written_.begin(), written_.end(), target) != written_.end();
    if (ours) return fail(target, "would be written twice: two fiches have the same id");
    if (is_link(target)) return fail(target, "is a link; what it leads to is not written over");
    if (kind_of(target) != PathKind::nothing && !request_.has("replace"))
      return fail(target, "is there already; add --replace to write over it");
    written_.push_back(target);
    write(target, file.bytes);
  }

  void write(const std::string& path, const std::string& bytes) {
    const std::string why = write_file(path, bytes);
    if (why.empty())
      say("wrote " + harmless(path));
    else
      fail(path, "cannot be written: " + why);
  }

  const Request& request_;
  Surroundings surroundings_;
  std::unique_ptr<Report> report_ = talk_report();
  Totals totals_;
  std::vector<std::string> written_;
  std::string kitchen_path_;
  std::vector<std::shared_ptr<const base::Source>> together_;  ///< for an export over all of them
};

std::string misuse(const Request& request) {
  if (request.words.empty()) return "say what to export: a fiche or a folder";
  if (request.has("to") && request.has("write")) return "--to is a folder for all files, --write one file: give one of them";
  if (request.has("replace") && !request.has("to")) return "--replace goes with --to";
  return seconds_misuse(request);
}

/// What can be asked for with --as, for the kitchen of the first path.
Exit list_exports(const Request& request) {
  Surroundings surroundings(request.get("kitchen"));
  KitchenPlugins& plugins = surroundings.plugins(request.words.empty() ? "." : request.words.front());
  const std::string have = offered(plugins, lua::Addition::Kind::export_);
  complain("say what to make with --as NAME");
  say("  → " + (have.empty() ? "no plugin adds an export" : "there is " + have));
  return Exit::failed;
}

Exit run_export(const Request& request) {
  if (!request.has("as")) return list_exports(request);
  return Export(request).run();
}

}  // namespace

extern const Verb verb_export;
const Verb verb_export{.name = "export",
                       .summary = "make a sheet, a page or a list of a fiche, as a plugin has it",
                       .usage = "tamis export --as NAME [OPTIONS] PATH...",
                       .help = help,
                       .words = "FILE",
                       .options = options,
                       .misuse = misuse,
                       .run = run_export};

}  // namespace tamis::cli
