#include "core/cli/help.h"

#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/folded.h"

namespace tamis::cli {
namespace {

std::string option_form(const Option& option) {
  std::string form = option.letter == 0 ? "    " : std::string("-") + option.letter + ", ";
  (form += "--") += option.name;
  if (!option.argument.empty()) (form += ' ') += option.argument;
  return form;
}

std::string option_text(const Option& option) {
  std::string text(option.help);
  if (!is_closed_choice(option.choices)) return text;
  text += ": ";
  for (const char c : option.choices) text += c == '|' ? std::string(", ") : std::string(1, c);
  return text;
}

std::string sentence(std::string_view line) {
  std::string out(line);
  if (out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
  return folded(out + ".", 0);
}

}  // namespace

std::string general_help() {
  std::string out =
      "Tamis reads, checks and converts a kitchen's recipes.\n\nusage: tamis VERB [OPTIONS] PATH...\n\n";
  std::vector<Row> rows;
  for (const Verb* verb : verbs()) rows.push_back({std::string(verb->name), std::string(verb->summary)});
  out += two_columns(rows);
  out += "\nA folder as PATH means every fiche in it; - is standard input.\n";
  out += "\"tamis VERB --help\" tells more about one of them.\n";
  return out;
}

std::string verb_help(const Verb& verb) {
  std::string out = "usage: " + std::string(verb.usage) + "\n\n" + sentence(verb.summary) + "\n";
  if (!verb.help.empty()) (out += '\n') += verb.help;
  std::vector<Row> rows;
  for (const Option& option : verb.options) rows.push_back({option_form(option), option_text(option)});
  rows.push_back({"-h, --help", "this text"});
  return out + "\nOptions\n" + two_columns(rows);
}

std::string version_line() { return "tamis " TAMIS_VERSION "\n"; }

}  // namespace tamis::cli
