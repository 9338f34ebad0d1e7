#include <array>
#include <string>

#include "core/cli/check_run.h"
#include "core/cli/crew.h"
#include "core/cli/offspring.h"
#include "core/cli/output.h"
#include "core/cli/plugin_choice.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"kitchen", 'k', "FILE", "judge with this kitchen file, not the kitchen.xml found above each fiche",
           "FILE"},
    Option{"report", 'r', "FORM", "how to tell it", "text|json|sarif|junit"},
    Option{"as", 0, "STATE", "judge each fiche as if it were in this state: a draft before others see it",
           "tested|released"},
    Option{"jobs", 'j', "N", "worker processes that share the files; auto is one a core", ""},
    Option{"seconds", 0, "N", "how long a plugin may work on one fiche: 10 when not given", ""},
    Option{"stream", 0, "", "read fiches in JSON, one a line, and write one result a line", ""},
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
  5 files checked: nothing found

--report sarif gives SARIF 2.1.0; advice is a note there. --report junit gives a
test suite a file and a test a rule that found something in it: errors are
failures, warnings are skipped tests (failures with --strict), advice is the
output of a test that passed; a file with nothing to say has one test that
passed, one that could not be checked has an error.

--stream reads standard input, or the files named, and answers each line with
one record: {"path", "line", "id", "findings"}, in order, with "failed" where a
line could not be checked (schemas/report.schema.json). What is wrong stands in
the records, so it ends with 0 when every line has its own, and 2 otherwise.

The result is the same for any number of --jobs. Fixes are written by one.
)";

std::string stream_misuse(const Request& request) {
  for (const std::string_view other : {"report", "strict", "mend", "write"})
    if (request.has(other)) return "--stream has a form of its own; leave --" + std::string(other) + " out";
  return {};
}

std::string misuse(const Request& request) {
  if (jobs_of(request.get("jobs", "1")) == 0)
    return "--jobs is a number from 1 to " + std::to_string(most_offspring) + ", or auto for one a core";
  if (const std::string wrong = seconds_misuse(request); !wrong.empty()) return wrong;
  if (request.has("stream")) return stream_misuse(request);
  if (request.words.empty()) return "say what to check: a fiche or a folder (. is the one you are in)";
  if (request.has("write") && !request.has("mend")) return "--write applies what --mend shows: give both";
  if (request.has("mend") && !request.has("write") && request.get("report", "text") != "text")
    return "--mend alone prints a patch; --report " + request.get("report") +
           " goes with --mend --write, or without --mend";
  for (const std::string& word : request.words)
    if (word == "-" && request.has("write")) return "standard input cannot be written to; name the file";
  return {};
}

Exit run_check(const Request& request) { return request.has("stream") ? check_lines(request) : check_paths(request); }

}  // namespace

extern const Verb verb_check;
const Verb verb_check{.name = "check",
                      .summary = "say what would go wrong in a fiche, and what to do about it",
                      .usage = "tamis check [OPTIONS] PATH...",
                      .help = help,
                      .words = "FILE",
                      .options = options,
                      .misuse = misuse,
                      .run = run_check};

}  // namespace tamis::cli
