#include <array>
#include <memory>
#include <string>

#include "core/cli/checking.h"
#include "core/cli/diff.h"
#include "core/cli/files.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"kitchen", 'k', "FILE", "judge with this kitchen file, not the kitchen.xml found above each fiche",
           "FILE"},
    Option{"report", 'r', "FORM", "how to tell it", "text|json"},
    Option{"as", 0, "STATE", "judge each fiche as if it were in this state: a draft before others see it",
           "tested|released"},
    Option{"strict", 0, "", "a warning fails the check too", ""},
    Option{"mend", 0, "", "show the sure fixes as a patch", ""},
    Option{"write", 'w', "", "with --mend: put the fixes into the files", ""},
};

constexpr std::string_view help =
    R"(PATH is a fiche, a kitchen file, a folder with all the fiches under it, or - for
standard input. Ends with 0 when no error was found, 1 when one was, 2 when the
check could not do its work.

A draft is not asked what only a reader would miss (how it keeps, allergens, a
trial, a picture of done). A tested fiche is, as advice; a released one, as
warnings. --as released asks a draft the same before it is given away.

  $ tamis check base
  3 files checked: nothing found
)";

/// How often a mended text is read again for fixes that only show, or only fit, once others are in.
constexpr int most_rounds = 8;

class Check {
 public:
  explicit Check(const Request& request)
      : request_(request),
        surroundings_(request.get("kitchen")),
        state_(request.get("as")),
        report_(request.get("report", "text") == "json" ? json_report() : text_report()) {}

  Exit run() {
    const bool patch_only = request_.has("mend") && !request_.has("write");
    for_each_source(request_.words, surroundings_, *report_, totals_, [&](const auto& source) {
      if (patch_only)
        show_patch(source);
      else
        tell(request_.has("mend") ? mend(source) : source);
      return !output_gone();
    });
    if (patch_only)
      say(count_of(patches_, "file") + " of " + std::to_string(totals_.files) +
          " can be mended; without --mend: " + counted(totals_) + " found");
    else
      report_->end(totals_);
    return exit();
  }

 private:
  [[nodiscard]] Exit exit() const {
    if (totals_.failed > 0) return Exit::failed;
    const bool found = totals_.errors > 0 || (request_.has("strict") && totals_.warnings > 0);
    return found ? Exit::found : Exit::good;
  }

  std::vector<base::Finding> judge(const std::shared_ptr<const base::Source>& source) {
    std::vector<base::Finding> findings = check_source(source, surroundings_, state_).findings;
    ++totals_.files;
    totals_.add(findings);
    return findings;
  }

  void tell(const std::shared_ptr<const base::Source>& source) { report_->file(*source, judge(source)); }

  std::string mended_bytes(std::shared_ptr<const base::Source> source) {
    for (int round = 0; round < most_rounds; ++round) {
      std::string better = mended(*source, check_source(source, surroundings_, state_).findings);
      if (better == source->bytes()) break;
      source = std::make_shared<base::Source>(source->path(), std::move(better));
    }
    return source->bytes();
  }

  void show_patch(const std::shared_ptr<const base::Source>& source) {
    judge(source);
    const std::string patch = unified_diff(source->path(), source->bytes(), mended_bytes(source));
    if (!patch.empty()) ++patches_;
    print(patch);
  }

  /// What there is to judge when the fixes are in the file; the file as it was when they could not be written.
  std::shared_ptr<const base::Source> mend(const std::shared_ptr<const base::Source>& source) {
    const std::string better = mended_bytes(source);
    if (better == source->bytes()) return source;
    const std::string why = write_file(source->path(), better);
    if (!why.empty()) {
      ++totals_.failed;
      report_->failed(source->path(), "cannot be written: " + why);
      return source;
    }
    say("mended " + harmless(source->path()));
    return std::make_shared<base::Source>(source->path(), better);
  }

  const Request& request_;
  Surroundings surroundings_;
  std::string state_;
  std::unique_ptr<Report> report_;
  Totals totals_;
  std::size_t patches_ = 0;
};

std::string misuse(const Request& request) {
  if (request.words.empty()) return "say what to check: a fiche or a folder (. is the one you are in)";
  if (request.has("write") && !request.has("mend")) return "--write applies what --mend shows: give both";
  if (request.has("mend") && !request.has("write") && request.get("report") == "json")
    return "--mend alone prints a patch; --report json goes with --mend --write, or without --mend";
  for (const std::string& word : request.words)
    if (word == "-" && request.has("write")) return "standard input cannot be written to; name the file";
  return {};
}

Exit run_check(const Request& request) {
  const std::string wrong = misuse(request);
  if (!wrong.empty()) {
    complain(wrong);
    return Exit::failed;
  }
  return Check(request).run();
}

}  // namespace

extern const Verb verb_check;
const Verb verb_check{.name = "check",
                      .summary = "say what would go wrong in a fiche, and what to do about it",
                      .usage = "tamis check [OPTIONS] PATH...",
                      .help = help,
                      .words = "FILE",
                      .options = options,
                      .run = run_check};

}  // namespace tamis::cli
