#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/utf8.h"
#include "core/cli/arguments.h"
#include "core/cli/desk.h"
#include "core/cli/excerpt.h"
#include "core/cli/files.h"
#include "core/cli/new_kitchen.h"
#include "core/cli/new_plugin.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/verb.h"
#include "core/format/draft.h"
#include "core/lua/settings.h"
#include "core/rules/rule.h"

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
    Option{"adds", 'a', "KINDS",
           "what a plugin is to add: check, conversion, export, or several with , between; check when not given", ""},
    Option{"to", 't', "FOLDER", "where to put a plugin; a folder of its name when not given", "FOLDER"},
};

constexpr std::string_view help =
    R"("new fiche" makes a fiche of a typed recipe; "new kitchen" a kitchen file to
fill in, with what each line means; "new plugin NAME" a plugin that works, with
its tests, to make one's own of.

A draft is typed as on any page: a title, a heading for each preparation, a line
for each ingredient ("250 g butter, diced", "4 eggs"), then the steps. What
could not be placed stays in the text and is asked about, line by line; nothing
is invented.

  $ tamis new fiche --from drafts/plum-bay-tart.txt --write tart.fiche.xml
  wrote tart.fiche.xml
  $ tamis new plugin poured --adds check,export
  wrote poured: 9 files
    "tamis plugins test poured" runs its tests
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

/// What --adds asks for; false, and said, where it is nothing of the kind.
bool read_kinds(const std::string& text, NewPlugin& wanted) {
  constexpr std::array<std::string_view, 3> kinds{"check", "conversion", "export"};
  for (const std::string& word : lua::split(text, ',')) {
    if (word == "check") wanted.check = true;
    else if (word == "conversion") wanted.conversion = true;
    else if (word == "export") wanted.export_ = true;
    else {
      const std::string near = did_you_mean(word, kinds);
      complain("a plugin cannot add a \"" + word + "\"");
      say("  → " + (near.empty() ? "it adds check, conversion or export; several with , between" : near));
      return false;
    }
  }
  return true;
}

/// A name that can stand in a file name and, with _ for -, in Lua.
bool is_plugin_name(std::string_view name) {
  const auto plain = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
  return !name.empty() && name.front() >= 'a' && name.front() <= 'z' && name.back() != '-' &&
         std::all_of(name.begin(), name.end(), plain);
}

Exit new_plugin(const Request& request) {
  NewPlugin wanted;
  wanted.id = request.words.size() == 2 ? request.words[1] : "";
  if (!is_plugin_name(wanted.id) || rules::rule_by_id(wanted.id) != nullptr) {
    const std::string named = "\"" + harmless(wanted.id) + "\"";
    complain(wanted.id.empty()           ? "say what the plugin is called: tamis new plugin house-words"
             : is_plugin_name(wanted.id) ? named + " is a rule of the check itself; take another name"
                                         : "a plugin cannot be called " + named + "; it is small letters, digits and -");
    return Exit::failed;
  }
  if (!read_kinds(request.get("adds", "check"), wanted)) return Exit::failed;
  const std::string folder = request.get("to", wanted.id);
  if (kind_of(folder) != PathKind::nothing) {
    complain(harmless(folder) + ": is there already; nothing was written");
    say("  → put it elsewhere with --to FOLDER");
    return Exit::failed;
  }
  const std::vector<NewFile> files = new_plugin_files(wanted);
  for (const NewFile& file : files) {
    const std::string path = folder + "/" + file.path;
    std::string why = make_folders(folder_of(path));
    if (why.empty()) why = write_file(path, file.bytes);
    if (why.empty()) continue;
    complain(harmless(path) + ": cannot be written: " + why);
    return Exit::failed;
  }
  say("wrote " + harmless(folder) + ": " + count_of(files.size(), "file"));
  say("  \"tamis plugins test " + harmless(folder) + "\" runs its tests");
  return Exit::good;
}

Exit run_new(const Request& request) {
  const std::string subject = request.words.empty() ? "" : request.words.front();
  if (subject == "plugin") return new_plugin(request);
  if (subject == "fiche" && request.words.size() == 1) return new_fiche(request);
  if (subject == "kitchen" && request.words.size() == 1) return put(request, std::string(new_kitchen_text));
  constexpr std::array<std::string_view, 3> subjects{"fiche", "kitchen", "plugin"};
  const std::string near = did_you_mean(subject, subjects);
  complain(subject.empty() ? "say what to begin: \"tamis new fiche\", \"tamis new kitchen\" or \"tamis new plugin NAME\""
           : request.words.size() > 1 ? "one word too many: \"" + harmless(request.words[1]) + "\""
                                      : "tamis cannot begin a \"" + harmless(subject) + "\"");
  if (request.words.size() == 1) say("  → " + (near.empty() ? "it is \"fiche\", \"kitchen\" or \"plugin\"" : near));
  return Exit::failed;
}

}  // namespace

extern const Verb verb_new;
const Verb verb_new{.name = "new",
                    .summary = "begin a fiche from a recipe as you typed it, a kitchen file or a plugin",
                    .usage = "tamis new fiche --from FILE | kitchen | plugin NAME [OPTIONS]",
                    .help = help,
                    .words = "fiche|kitchen|plugin",
                    .options = options,
                    .run = run_new};

}  // namespace tamis::cli
