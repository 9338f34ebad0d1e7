#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "core/base/utf8.h"
#include "core/cli/arguments.h"
#include "core/cli/desk.h"
#include "core/cli/excerpt.h"
#include "core/cli/files.h"
#include "core/cli/new_kitchen.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/verb.h"
#include "core/format/draft.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"from", 'f', "FILE", "the recipe as you typed it; - is standard input", "FILE"},
    Option{"lang", 'l', "LANGUAGE", "language it is typed in: en, fr, de, es; found from the words when not given",
           ""},
    Option{"units", 'u', "SYSTEM", "whose cup, pint and ounce it means; found from the words when not given",
           "metric|us|imperial"},
    Option{"kitchen", 'k', "FILE", "the kitchen file whose foods are looked in first", "FILE"},
    Option{"write", 'w', "FILE", "where to put it; printed when not given", "FILE"},
};

constexpr std::string_view help =
    R"("new fiche" makes a fiche of a typed recipe; "new kitchen" a kitchen file to
fill in, with what each line means.

A draft is typed as on any page: a title, a heading for each preparation, a line
for each ingredient ("250 g butter, diced", "4 eggs"), then the steps. What
could not be placed stays in the text and is asked about, line by line; nothing
is invented.

  $ tamis new fiche --from drafts/plum-bay-tart.txt --write tart.fiche.xml
  wrote tart.fiche.xml
)";

Exit put(const Request& request, const std::string& text) {
  const std::string path = request.get("write");
  if (path.empty()) {
    print(text);
    return Exit::good;
  }
  const std::string why = write_file(path, text);
  if (!why.empty()) {
    complain(path + ": cannot be written: " + why);
    return Exit::failed;
  }
  say("wrote " + harmless(path));
  return Exit::good;
}

/// The questions, each under the line it is about; they are talk, the fiche is the result.
void ask(const base::Source& typed, const std::vector<format::Question>& questions) {
  if (questions.empty()) return;
  say(count_of(questions.size(), "question") + " about " + harmless(typed.path()) + ":");
  for (const format::Question& question : questions) {
    const std::string number = std::to_string(typed.place(question.where.begin).line);
    say("  line " + number + ": " + harmless(question.words));
    const Excerpt shown = excerpt(typed, question.where, output_columns() - 4);
    if (shown.line.empty()) continue;
    say("    " + shown.line);
    say("    " + std::string(shown.before, ' ') + "^" + std::string(shown.marked - 1, '~'));
  }
}

/// A language that drafts are read in, or none.
bool is_read(std::string_view tag) {
  constexpr std::array<std::string_view, 5> languages = {"", "en", "fr", "de", "es"};
  return std::find(languages.begin(), languages.end(), tag.substr(0, tag.find('-'))) != languages.end();
}

Exit new_fiche(const Request& request) {
  if (!request.has("from")) {
    complain("say where the typed recipe is: tamis new fiche --from draft.txt");
    return Exit::failed;
  }
  if (!is_read(request.get("lang"))) {
    complain("--lang cannot be \"" + request.get("lang") + "\"");
    say("  → it is one of en, fr, de or es, with a country if it matters: en-GB");
    return Exit::failed;
  }
  const Desk desk = desk_of(request);
  if (!desk.fault.empty()) {
    complain(desk.fault);
    return Exit::failed;
  }
  const std::string path = request.get("from");
  const auto typed = read_file(path);
  if (!typed) {
    complain(path + ": " + typed.fault().message);
    return Exit::failed;
  }
  const std::size_t wrong = base::find_invalid_utf8((*typed)->bytes());
  if (wrong != std::string::npos) {
    const base::Place place = (*typed)->place(static_cast<std::uint32_t>(wrong));
    complain(path + ": line " + std::to_string(place.line) + " is not UTF-8 text; save it as UTF-8 and try again");
    return Exit::failed;
  }
  const format::Drafted drafted =
      format::read_draft(**typed, *desk.kitchen, {request.get("lang"), request.get("units")});
  ask(**typed, drafted.questions);
  return put(request, drafted.xml);
}

Exit run_new(const Request& request) {
  const std::string subject = request.words.size() == 1 ? request.words.front() : "";
  if (subject == "fiche") return new_fiche(request);
  if (subject == "kitchen") return put(request, std::string(new_kitchen_text));
  constexpr std::array<std::string_view, 2> subjects{"fiche", "kitchen"};
  const std::string near = did_you_mean(subject, subjects);
  complain(subject.empty() ? "say what to begin: \"tamis new fiche\" or \"tamis new kitchen\""
                           : "tamis cannot begin a \"" + subject + "\"");
  if (!subject.empty()) say("  → " + (near.empty() ? "it is \"fiche\" or \"kitchen\"" : near));
  return Exit::failed;
}

}  // namespace

extern const Verb verb_new;
const Verb verb_new{.name = "new",
                    .summary = "begin a fiche from a recipe as you typed it, or a kitchen file",
                    .usage = "tamis new fiche --from FILE [OPTIONS] | tamis new kitchen",
                    .help = help,
                    .words = "fiche|kitchen",
                    .options = options,
                    .run = run_new};

}  // namespace tamis::cli
