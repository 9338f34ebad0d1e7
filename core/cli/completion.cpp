#include "core/cli/completion.h"

#include <algorithm>
#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/verb.h"
#include "core/food/food.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

/// Words that a place of the command line can hold, and whether it is a path.
struct Fill {
  std::string words;  ///< separated by spaces
  bool path = false;
};

void add(std::string& words, std::string_view word) {
  if (!words.empty()) words += ' ';
  words += word;
}

Fill fill_of(std::string_view what) {
  Fill fill;
  if (is_path_choice(what)) {
    fill.path = true;
  } else if (what == "RULE") {
    for (const rules::Rule* rule : rules::rules()) add(fill.words, rule->id);
  } else if (what == "FOOD") {
    for (const food::Food& food : food::foods()) add(fill.words, food.id);
  } else {
    for (const std::string_view word : choices_in(what)) add(fill.words, word);
  }
  return fill;
}

std::string verb_names() {
  std::string names;
  for (const Verb* verb : verbs()) add(names, verb->name);
  return names;
}

std::string option_names(const Verb& verb) {
  std::string names;
  for (const Option& option : verb.options) add(names, "--" + std::string(option.name));
  add(names, "--help");
  return names;
}

/// A text inside '…' of a POSIX shell or of fish: both end the quotes around a quote mark.
std::string quoted(std::string_view text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out += '\'';
}

std::string bash_value_cases() {
  std::string out;
  for (const Verb* verb : verbs()) {
    for (const Option& option : verb->options) {
      if (option.argument.empty()) continue;
      const Fill fill = fill_of(option.choices);
      const std::string reply =
          fill.path ? "compgen -f -- \"$word\"" : "compgen -W \"" + fill.words + "\" -- \"$word\"";
      out += "    \"" + std::string(verb->name) + " --" + std::string(option.name) +
             "\") mapfile -t COMPREPLY < <(" + reply + "); return ;;\n";
    }
  }
  return out;
}

std::string bash_verb_cases() {
  std::string out;
  for (const Verb* verb : verbs())
    out += "    " + std::string(verb->name) + ") options=\"" + option_names(*verb) + "\"; words=\"" +
           fill_of(verb->words).words + "\" ;;\n";
  return out;
}

std::string bash() {
  return R"(# Completion of tamis for bash.
_tamis() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} verb=${COMP_WORDS[1]} options words
  if ((COMP_CWORD == 1)); then
    mapfile -t COMPREPLY < <(compgen -W ")" +
         verb_names() + R"( --help --version" -- "$word")
    return
  fi
  case "$verb $before" in
)" + bash_value_cases() +
         R"(  esac
  case "$verb" in
)" + bash_verb_cases() +
         R"(  esac
  if [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word")
  elif [[ -n $words ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
  else
    mapfile -t COMPREPLY < <(compgen -f -- "$word")
  fi
}
complete -o filenames -F _tamis tamis
)";
}

/// "[help text]" of a zsh option: brackets and colons are its own signs.
std::string zsh_text(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_fill(std::string_view what) {
  const Fill fill = fill_of(what);
  return fill.path ? "_files" : fill.words.empty() ? "" : "(" + fill.words + ")";
}

std::string zsh_verb(const Verb& verb) {
  std::string out = "    " + std::string(verb.name) + ") _arguments";
  for (const Option& option : verb.options) {
    std::string form = "--" + std::string(option.name) + "[" + zsh_text(option.help) + "]";
    if (!option.argument.empty()) form += ":" + std::string(option.argument) + ":" + zsh_fill(option.choices);
    out += " " + quoted(form);
  }
  return out + " " + quoted("*:word:" + zsh_fill(verb.words)) + " ;;\n";
}

std::string zsh() {
  std::string list;
  std::string cases;
  for (const Verb* verb : verbs()) {
    list += "  " + quoted(std::string(verb->name) + ":" + zsh_text(verb->summary)) + "\n";
    cases += zsh_verb(*verb);
  }
  return "#compdef tamis\n# Completion of tamis for zsh.\nlocal -a verbs\nverbs=(\n" + list +
         ")\nif ((CURRENT == 2)); then\n  _describe verb verbs\nelse\n  local verb=$words[2]\n  shift words\n"
         "  ((CURRENT--))\n  case $verb in\n" +
         cases + "  esac\nfi\n";
}

std::string fish_option(const Verb& verb, const Option& option) {
  std::string line = "complete -c tamis -n '__fish_seen_subcommand_from " + std::string(verb.name) + "' -l " +
                     std::string(option.name);
  if (!option.argument.empty()) {
    const Fill fill = fill_of(option.choices);
    line += fill.path ? " -r -F" : " -x -a " + quoted(fill.words);
  }
  return line + " -d " + quoted(option.help) + "\n";
}

std::string fish() {
  std::string out = "# Completion of tamis for fish.\n";
  for (const Verb* verb : verbs()) {
    out += "complete -c tamis -f -n __fish_use_subcommand -a " + std::string(verb->name) + " -d " +
           quoted(verb->summary) + "\n";
    for (const Option& option : verb->options) out += fish_option(*verb, option);
    const Fill fill = fill_of(verb->words);
    if (!fill.path && !fill.words.empty())
      out += "complete -c tamis -f -n '__fish_seen_subcommand_from " + std::string(verb->name) + "' -a " +
             quoted(fill.words) + "\n";
  }
  return out;
}

}  // namespace

std::string completion_for(std::string_view shell) {
  if (shell == "bash") return bash();
  if (shell == "zsh") return zsh();
  if (shell == "fish") return fish();
  return {};
}

}  // namespace tamis::cli
