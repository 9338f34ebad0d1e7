#include <string>
#include <variant>
#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/files.h"
#include "core/cli/help.h"
#include "core/cli/output.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

Exit misuse(const Misuse& wrong) {
  complain(wrong.what);
  if (!wrong.advice.empty()) say("  → " + harmless(wrong.advice));
  return Exit::failed;
}

Misuse no_such_verb(const std::string& typed) {
  if (typed.starts_with("-"))
    return {"the verb comes first, before \"" + typed + "\"", "write tamis VERB " + typed};
  if (kind_of(typed) != PathKind::nothing)
    return {"\"" + typed + "\" is a path; say what to do with it", "write tamis check " + typed};
  std::vector<std::string_view> names;
  for (const Verb* verb : verbs()) names.push_back(verb->name);
  const std::string near = did_you_mean(typed, names);
  return {"there is no verb \"" + typed + "\"", near.empty() ? "\"tamis --help\" lists the verbs" : near};
}

Exit run_verb(const Verb& verb, std::span<const std::string> arguments) {
  auto read = read_arguments(verb, arguments);
  if (const auto* wrong = std::get_if<Misuse>(&read)) return misuse(*wrong);
  const auto& request = std::get<Request>(read);
  if (request.has("help")) {
    print(verb_help(verb));
    return Exit::good;
  }
  if (verb.misuse != nullptr) {
    if (const std::string wrong = verb.misuse(request); !wrong.empty()) {
      complain(wrong);
      return Exit::failed;
    }
  }
  return verb.run(request);
}

Exit help_on(std::span<const std::string> words) {
  if (words.empty()) {
    print(general_help());
    return Exit::good;
  }
  const Verb* verb = verb_named(words.front());
  if (verb == nullptr) return misuse(no_such_verb(words.front()));
  print(verb_help(*verb));
  return Exit::good;
}

Exit dispatch(std::span<const std::string> arguments) {
  if (arguments.empty()) {
    say(general_help());
    return Exit::failed;
  }
  const std::string& first = arguments.front();
  if (first == "--help" || first == "-h" || first == "help") return help_on(arguments.subspan(1));
  if (first == "--version") {
    print(version_line());
    return Exit::good;
  }
  const Verb* verb = verb_named(first);
  return verb == nullptr ? misuse(no_such_verb(first)) : run_verb(*verb, arguments.subspan(1));
}

}  // namespace

Exit run(std::span<const std::string> arguments) {
  const Exit exit = dispatch(arguments);
  return flush_output() ? exit : Exit::failed;
}

}  // namespace tamis::cli
