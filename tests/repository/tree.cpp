#include "tests/repository/tree.h"

#include <algorithm>
#include <filesystem>

namespace tamis::tests {
namespace {

namespace fs = std::filesystem;

bool passed_by(const std::string& name) {
  return name.starts_with(".") || name.starts_with("build") || name == "__pycache__";
}

void add_files(const fs::path& folder, std::vector<std::string>& files) {
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (passed_by(entry.path().filename().string()) &&
        (entry.is_directory() || entry.path().filename().string()[0] == '.'))
      continue;
    if (entry.is_directory())
      add_files(entry.path(), files);
    else
      files.push_back(fs::relative(entry.path(), TAMIS_SOURCE_DIR).generic_string());
  }
}

}  // namespace

std::vector<std::string> project_files() {
  std::vector<std::string> files;
  add_files(TAMIS_SOURCE_DIR, files);
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<std::string> top_level_names() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(TAMIS_SOURCE_DIR))
    if (!passed_by(entry.path().filename().string())) names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

std::string core_folder(std::string_view path) {
  if (!path.starts_with("core/")) return {};
  const std::string_view rest = path.substr(5);
  const std::size_t slash = rest.find('/');
  return std::string(slash == std::string_view::npos ? "" : rest.substr(0, slash));
}

}  // namespace tamis::tests
