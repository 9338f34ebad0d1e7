#include <csignal>
#include <string>
#include <vector>

#include "core/cli/verb.h"

int main(int count, char** arguments) {
  // A reader that goes away is seen by the write, so that a file being written is never left half done.
  std::signal(SIGPIPE, SIG_IGN);
  const std::vector<std::string> words(arguments + (count > 0 ? 1 : 0), arguments + count);
  return static_cast<int>(tamis::cli::run(words));
}
