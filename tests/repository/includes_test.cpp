#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <string_view>

#include "tests/repository/tree.h"
#include "tests/shared_files.h"

using namespace tamis::tests;

namespace {

// Lowest first: a folder may include itself and those before it.
constexpr std::array<std::string_view, 15> order{"base",    "measure", "food",  "fiche", "format",
                                                 "physics", "flow",    "tally", "rules", "change",
                                                 "plan",    "record",  "draw",  "lua",   "cli"};

// Headers of other libraries, and the one folder that may see each.
const std::map<std::string, std::string> owners{{"pugixml", "lua"},
                                                {"nlohmann", "format"},
                                                {"lua", "lua"},
                                                {"sol", "lua"},
                                                {"boost/program_options", "cli"}};

std::ptrdiff_t rank(const std::string& folder) {
  const auto found = std::find(order.begin(), order.end(), folder);
  return found == order.end() ? -1 : found - order.begin();
}

/// Why a file of `folder` may not include `header`; "" when it may.
std::string refused(const std::string& folder, const std::string& header, bool is_header) {
  if (header.starts_with("tests/")) return "core does not use the tests";
  const std::string other = core_folder(header);
  if (!other.empty()) {
    if (rank(other) < 0) return "no such folder of core";
    if (rank(other) > rank(folder)) return "a folder does not use those above it";
    const bool may_read_files = folder == "format" || folder == "lua" || folder == "cli";
    return other == "format" && !may_read_files ? "format is used by lua and cli alone" : "";
  }
  for (const auto& [start, owner] : owners) {
    if (!header.starts_with(start)) continue;
    if (owner != folder) return "only " + owner + " may see it";
    if (is_header) return "other libraries stay out of our headers";
  }
  return {};
}

/// What stands between <> or "" behind #include; "" for another line.
std::string included(const std::string& line) {
  const std::size_t start = line.find_first_not_of(' ');
  if (start == std::string::npos || !line.substr(start).starts_with("#include ")) return {};
  const std::size_t open = line.find_first_of("<\"");
  const std::size_t close = line.find_first_of(">\"", open + 1);
  return close == std::string::npos ? "" : line.substr(open + 1, close - open - 1);
}

bool is_source(const std::string& path) {
  return path.ends_with(".cpp") || path.ends_with(".h") || path.ends_with(".inc");
}

}  // namespace

TEST_CASE("every include goes down the list of folders, and other libraries stay in their one place",
          "[repository]") {
  std::size_t seen = 0;
  for (const std::string& path : project_files()) {
    const std::string folder = core_folder(path);
    if (folder.empty() || !is_source(path)) continue;
    INFO(path);
    CHECK(rank(folder) >= 0);
    for (const std::string& line : lines_of(project_file(path))) {
      const std::string header = included(line);
      if (header.empty()) continue;
      ++seen;
      CAPTURE(header);
      CHECK(refused(folder, header, path.ends_with(".h")) == "");
    }
  }
  CHECK(seen > 200);
}

TEST_CASE("the rule about includes refuses what it should", "[repository]") {
  struct Row {
    const char* folder;
    const char* header;
    bool allowed;
  };
  const Row rows[] = {
      {"fiche", "core/base/source.h", true},    {"base", "core/fiche/document.h", false},
      {"rules", "core/format/format.h", false}, {"cli", "core/format/format.h", true},
      {"format", "pugixml.hpp", false},         {"lua", "pugixml.hpp", true},
      {"food", "boost/rational.hpp", true},     {"food", "boost/program_options.hpp", false},
      {"food", "core/nowhere/x.h", false},      {"food", "tests/shared_files.h", false},
  };
  for (const Row& row : rows) {
    CAPTURE(row.folder, row.header);
    CHECK(refused(row.folder, row.header, false).empty() == row.allowed);
  }
}

TEST_CASE("a header's guard is its path", "[repository]") {
  for (const std::string& path : project_files()) {
    if (!path.ends_with(".h")) continue;
    std::string guard;
    for (const char c : path)
      guard += c == '/' || c == '.' ? '_' : static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    INFO(path);
    CHECK(project_file(path).starts_with("#ifndef " + guard + "\n#define " + guard + "\n"));
  }
}

TEST_CASE("files, processes, clocks, threads and standard output are the command line's alone", "[repository]") {
  for (const std::string& path : project_files()) {
    const std::string folder = core_folder(path);
    if (folder.empty() || folder == "cli" || !is_source(path)) continue;
    INFO(path);
    for (const std::string& line : lines_of(project_file(path))) {
      const std::string header = included(line);
      for (const char* taken :
           {"iostream", "fstream", "filesystem", "thread", "mutex", "unistd.h", "future", "ctime"})
        CHECK(header != taken);
    }
  }
}
