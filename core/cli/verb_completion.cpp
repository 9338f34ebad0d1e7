#include <array>
#include <string>

#include "core/cli/completion.h"
#include "core/cli/output.h"
#include "core/cli/verb.h"

namespace tamis::cli {
namespace {

constexpr std::string_view help =
    R"(Prints what teaches your shell to complete the verbs and options of tamis.
Put it where your shell looks for such files; for bash:

  tamis completion bash > ~/.local/share/bash-completion/completions/tamis
)";

Exit run_completion(const Request& request) {
  const std::string shell = request.words.size() == 1 ? request.words.front() : "";
  const std::string script = completion_for(shell);
  if (script.empty()) {
    complain("\"tamis completion\" takes the name of one shell: bash, zsh or fish");
    return Exit::failed;
  }
  print(script);
  return Exit::good;
}

}  // namespace

extern const Verb verb_completion;
const Verb verb_completion{.name = "completion",
                           .summary = "let your shell complete the words for you",
                           .usage = "tamis completion bash|zsh|fish",
                           .help = help,
                           .words = "bash|zsh|fish",
                           .options = {},
                           .run = run_completion};

}  // namespace tamis::cli
