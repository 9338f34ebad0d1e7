#ifndef CORE_CLI_ARGUMENTS_H
#define CORE_CLI_ARGUMENTS_H

#include <span>
#include <string>
#include <variant>
#include <vector>

#include "core/cli/verb.h"

namespace tamis::cli {

/// What is wrong with a command line, and what to do about it.
struct Misuse {
  std::string what;
  std::string advice;
};

/// Reads what stands behind the verb by the verb's own table. "-5 °C" is a word, not an option, and so is all
/// behind
/// "--". An option of the table given twice, one without its value, or a value that is none of its choices is
/// misuse, with the nearest right one in the advice. --help is understood for every verb (option "help").
std::variant<Request, Misuse> read_arguments(const Verb& verb, std::span<const std::string> arguments);

/// The words of a list "a|b|c".
std::vector<std::string_view> choices_in(std::string_view choices);

/// "did you mean \"check\"?", or empty when none of the words is near.
std::string did_you_mean(std::string_view typed, std::span<const std::string_view> words);

/// True for choices that are a kind of path ("FILE", "FOLDER").
bool is_path_choice(std::string_view choices);

/// True for choices that are a list of words, not a kind of thing ("FILE", "FOOD") and not open.
bool is_closed_choice(std::string_view choices);

}  // namespace tamis::cli

#endif
