#include "core/cli/help.h"

#include <algorithm>
#include <vector>

#include "core/base/utf8.h"
#include "core/cli/arguments.h"

namespace tamis::cli {
namespace {

struct Row {
  std::string left;
  std::string right;
};

constexpr std::size_t page_width = 80;

/// Words of `text` in lines that end before the page does, all but the first behind `indent` spaces.
std::string folded(std::string_view text, std::size_t indent) {
  std::string out;
  std::size_t column = indent;
  while (!text.empty()) {
    const std::size_t space = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, space);
    const std::size_t width = base::terminal_width(word);
    if (column > indent && column + 1 + width > page_width) {
      (out += '\n').append(indent, ' ');
      column = indent;
    } else if (column > indent) {
      out += ' ';
      ++column;
    }
    out += word;
    column += width;
    text.remove_prefix(std::min(space + 1, text.size()));
  }
  return out;
}

std::string columns(const std::vector<Row>& rows) {
  std::size_t left = 0;
  for (const Row& row : rows) left = std::max(left, base::terminal_width(row.left));
  std::string out;
  for (const Row& row : rows) {
    (out += "  ") += row.left;
    out.append(left - base::terminal_width(row.left) + 2, ' ');
    (out += folded(row.right, left + 4)) += '\n';
  }
  return out;
}

std::string option_form(const Option& option) {
  std::string form = option.letter == 0 ? "    " : std::string("-") + option.letter + ", ";
  (form += "--") += option.name;
  if (!option.argument.empty()) (form += ' ') += option.argument;
  return form;
}

std::string option_text(const Option& option) {
  std::string text(option.help);
  if (option.choices.empty() || is_path_choice(option.choices)) return text;
  text += ": ";
  for (const char c : option.choices) text += c == '|' ? std::string(", ") : std::string(1, c);
  return text;
}

}  // namespace

std::string general_help() {
  std::string out = "Tamis reads, checks and converts a kitchen's recipes.\n\nusage: tamis VERB [OPTIONS] PATH...\n\n";
  std::vector<Row> rows;
  for (const Verb* verb : verbs()) rows.push_back({std::string(verb->name), std::string(verb->summary)});
  out += columns(rows);
  out += "\nA folder as PATH means every fiche in it; - is standard input.\n";
  out += "\"tamis VERB --help\" tells more about one of them.\n";
  return out;
}

std::string verb_help(const Verb& verb) {
  std::string out = "usage: " + std::string(verb.usage) + "\n\n" + std::string(verb.summary) + ".\n";
  if (!verb.help.empty()) (out += '\n') += verb.help;
  std::vector<Row> rows;
  for (const Option& option : verb.options) rows.push_back({option_form(option), option_text(option)});
  rows.push_back({"-h, --help", "this text"});
  return out + "\nOptions\n" + columns(rows);
}

std::string version_line() { return "tamis " TAMIS_VERSION "\n"; }

}  // namespace tamis::cli
