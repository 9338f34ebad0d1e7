#ifndef TESTS_CLI_PROCESS_H
#define TESTS_CLI_PROCESS_H

#include <string>
#include <vector>

namespace tamis::tests {

/// What a run of the program gave.
struct Ran {
  int exit = -1;  ///< 128 and the number of the signal that ended it
  std::string out;
  std::string err;
};

/// Runs the built program with these words and this standard input, in a folder, without colour.
Ran run_tamis(const std::vector<std::string>& words, const std::string& input = {},
              const std::string& folder = ".");

/// A folder of its own that goes away with the test.
class TemporaryFolder {
 public:
  TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder();
  [[nodiscard]] const std::string& path() const { return path_; }
  /// Writes a file under it, folders made as needed, and gives its full path.
  std::string write(const std::string& name, const std::string& bytes) const;
  [[nodiscard]] std::string read(const std::string& name) const;

 private:
  std::string path_;
};

/// A fiche with nothing to say about, and one with a single finding, an element that is misspelled.
extern const char* const good_fiche;
extern const char* const bad_fiche;

}  // namespace tamis::tests

#endif
