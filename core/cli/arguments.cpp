#include "core/cli/arguments.h"

#include <algorithm>
#include <boost/program_options.hpp>

#include "core/base/nearest.h"

namespace tamis::cli {
namespace {

namespace po = boost::program_options;

po::options_description table_of(const Verb& verb) {
  po::options_description table;
  for (const Option& option : verb.options) {
    std::string name(option.name);
    if (option.letter != 0) (name += ',') += option.letter;
    if (option.argument.empty())
      table.add_options()(name.c_str(), "");
    else
      table.add_options()(name.c_str(), po::value<std::string>(), "");
  }
  table.add_options()("help,h", "");
  return table;
}

/// Takes "-5 °C" as a word: a minus before a figure is a temperature, not an option.
std::vector<po::option> below_zero(std::vector<std::string>& rest) {
  const std::string& first = rest.front();
  const bool figure =
      first.size() > 1 && first[0] == '-' && (first[1] == '.' || (first[1] >= '0' && first[1] <= '9'));
  if (!figure) return {};
  po::option word;
  word.value.push_back(first);
  word.original_tokens.push_back(first);
  rest.erase(rest.begin());
  return {word};
}

std::vector<std::string_view> option_names(const Verb& verb) {
  std::vector<std::string_view> names;
  for (const Option& option : verb.options) names.push_back(option.name);
  names.emplace_back("help");
  return names;
}

std::string see_help(const Verb& verb) {
  return "\"tamis " + std::string(verb.name) + " --help\" lists the options";
}

std::string without_dashes(const std::string& option) {
  return option.substr(std::min(option.size(), option.find_first_not_of('-')));
}

/// The one name that starts with what was typed, else the nearest.
std::string_view meant(const std::string& typed, const std::vector<std::string_view>& names) {
  const auto starts = [&typed](std::string_view name) { return !typed.empty() && name.starts_with(typed); };
  if (std::count_if(names.begin(), names.end(), starts) == 1)
    return *std::find_if(names.begin(), names.end(), starts);
  return base::nearest(typed, names);
}

Misuse unknown(const Verb& verb, const std::string& typed) {
  const std::string_view near = meant(without_dashes(typed), option_names(verb));
  return {"\"tamis " + std::string(verb.name) + "\" has no option \"" + typed + "\"",
          near.empty() ? see_help(verb) : "did you mean --" + std::string(near) + "?"};
}

const Option* named(const Verb& verb, std::string_view name) {
  for (const Option& option : verb.options)
    if (option.name == name) return &option;
  return nullptr;
}

Misuse no_value(const Verb& verb, std::string name) {
  name = without_dashes(name);
  const Option* option = named(verb, name);
  const std::string wanted = option == nullptr ? "VALUE" : std::string(option->argument);
  return {"--" + name + " needs a value", "write --" + name + " " + wanted};
}

std::string listed(std::string_view choices) {
  std::string out;
  const auto words = choices_in(choices);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

/// Nothing when the value may stand there.
std::string wrong_choice(const Option& option, const std::string& value) {
  if (!is_closed_choice(option.choices)) return {};
  const auto words = choices_in(option.choices);
  for (const std::string_view word : words)
    if (word == value) return {};
  const std::string near = did_you_mean(value, words);
  return near.empty() ? "it is one of " + listed(option.choices) : near;
}

std::variant<Request, Misuse> sorted_out(const Verb& verb, const std::vector<po::option>& found) {
  Request request;
  for (const po::option& given : found) {
    if (given.string_key.empty()) {
      request.words.insert(request.words.end(), given.value.begin(), given.value.end());
      continue;
    }
    const std::string value = given.value.empty() ? "" : given.value.front();
    if (!request.options.emplace(given.string_key, value).second)
      return Misuse{"--" + given.string_key + " is given twice", "leave one of them out"};
    const Option* option = named(verb, given.string_key);
    if (option == nullptr) continue;
    if (const std::string why = wrong_choice(*option, value); !why.empty())
      return Misuse{"--" + given.string_key + " cannot be \"" + value + "\"", why};
  }
  return request;
}

}  // namespace

std::string Request::get(std::string_view name, std::string_view otherwise) const {
  const auto found = options.find(name);
  return found == options.end() ? std::string(otherwise) : found->second;
}

bool is_path_choice(std::string_view choices) { return choices == "FILE" || choices == "FOLDER"; }

bool is_closed_choice(std::string_view choices) { return choices.find('|') != std::string_view::npos; }

std::vector<std::string_view> choices_in(std::string_view choices) {
  std::vector<std::string_view> words;
  while (!choices.empty()) {
    const std::size_t bar = choices.find('|');
    words.push_back(choices.substr(0, bar));
    choices.remove_prefix(bar == std::string_view::npos ? choices.size() : bar + 1);
  }
  return words;
}

std::string did_you_mean(std::string_view typed, std::span<const std::string_view> words) {
  const std::string_view near = base::nearest(typed, words);
  return near.empty() ? "" : "did you mean \"" + std::string(near) + "\"?";
}

std::variant<Request, Misuse> read_arguments(const Verb& verb, std::span<const std::string> arguments) {
  using Style = po::command_line_style::style_t;
  // Everything the usual style has but guessing: a shortened option would change its meaning when one is added.
  constexpr int style = Style::allow_long | Style::allow_short | Style::long_allow_adjacent |
                        Style::long_allow_next | Style::short_allow_adjacent | Style::short_allow_next |
                        Style::allow_dash_for_short | Style::allow_sticky;
  const po::options_description table = table_of(verb);
  try {
    po::command_line_parser parser(std::vector<std::string>(arguments.begin(), arguments.end()));
    parser.options(table).style(style).extra_style_parser(below_zero);
    return sorted_out(verb, parser.run().options);
  } catch (const po::unknown_option& error) {
    return unknown(verb, error.get_option_name());
  } catch (const po::invalid_command_line_syntax& error) {
    if (error.kind() == po::invalid_syntax::missing_parameter ||
        error.kind() == po::invalid_syntax::empty_adjacent_parameter)
      return no_value(verb, error.get_option_name());
    return Misuse{"--" + without_dashes(error.tokens()) + " takes no value", see_help(verb)};
  } catch (const po::error& error) {
    return Misuse{error.what(), see_help(verb)};
  }
}

}  // namespace tamis::cli
