#ifndef TESTS_SHARED_FILES_H
#define TESTS_SHARED_FILES_H

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>

namespace tamis::tests {

/// A file of the project ("tests/kitchen/kitchen.xml"), whole. Empty string when it is not there.
inline std::string project_file(const std::string& path) {
  std::ifstream in(std::string(TAMIS_SOURCE_DIR) + "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// A file of the reference data that may lie beside the project ("reference/units.csv"). When it is not there, says
/// so in the words ctest takes for a skip, and gives nothing: the test then returns.
inline std::optional<std::string> shared_file(const std::string& path) {
  const char* elsewhere = std::getenv("TAMIS_SHARED");
  const std::string root = elsewhere != nullptr ? elsewhere : std::string(TAMIS_SOURCE_DIR) + "/../shared";
  std::ifstream in(root + "/" + path, std::ios::binary);
  if (!in) {
    std::printf("SKIPPED: reference file %s is not beside the project\n", path.c_str());
    return std::nullopt;
  }
  return std::string(std::istreambuf_iterator<char>(in), {});
}

}  // namespace tamis::tests

#endif
