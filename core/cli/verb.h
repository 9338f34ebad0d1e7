#ifndef CORE_CLI_VERB_H
#define CORE_CLI_VERB_H

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tamis::cli {

/// Exit codes of the contract.
enum class Exit : int { good = 0, found = 1, failed = 2 };

struct Option {
  std::string_view name;      ///< "units"; given as --units
  char letter = 0;            ///< one-letter form, or 0
  std::string_view argument;  ///< "SYSTEM"; "" for a switch
  std::string_view help;
  std::string_view choices;  ///< "metric|us|imperial"; "" when open; "FILE", "FOLDER" complete as such
};

/// What the user typed after the verb, options checked against the verb's table.
struct Request {
  std::vector<std::string> words;  ///< positional
  std::map<std::string, std::string, std::less<>> options;
  [[nodiscard]] bool has(std::string_view name) const { return options.find(name) != options.end(); }
  [[nodiscard]] std::string get(std::string_view name, std::string_view otherwise = {}) const;
};

/// One verb: core/cli/verb_<name>.cpp and a line in core/cli/verbs.inc.
struct Verb {
  std::string_view name;
  std::string_view summary;  ///< one line, in a cook's words
  std::string_view usage;    ///< "tamis check [OPTIONS] PATH..."
  std::string_view help;     ///< a few lines more, with an example and its real output
  std::string_view words;    ///< what its words are, for completion: "FILE", "RULE", "FOOD", "fiche|kitchen"
  std::span<const Option> options;
  std::string (*misuse)(const Request& request) = nullptr;  ///< what is wrong with the words and options; "" when nothing
  Exit (*run)(const Request& request);
};

std::span<const Verb* const> verbs();
const Verb* verb_named(std::string_view name);

/// The whole command line, without the program's name.
Exit run(std::span<const std::string> arguments);

}  // namespace tamis::cli

#endif
