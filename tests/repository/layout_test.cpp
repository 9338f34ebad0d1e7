#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>
#include <set>
#include <string>
#include <vector>

#include "tests/repository/tree.h"
#include "tests/shared_files.h"

using namespace tamis::tests;

namespace {

// Data rather than code: their length is that of what they list.
bool is_table(const std::string& path) { return path.ends_with(".inc"); }

constexpr std::size_t second_noun = 400;  // past this a file is likely to serve two purposes
constexpr std::size_t too_long = 500;

}  // namespace

TEST_CASE("the top level holds the agreed names and no others", "[repository]") {
  const std::set<std::string> agreed{"CMakeLists.txt", "DEVELOPERS.md", "LICENSE", "README.md", "core",
                                     "plugins",        "schemas",       "scripts", "tests"};
  for (const std::string& name : top_level_names()) {
    CAPTURE(name);
    CHECK(agreed.count(name) == 1);
  }
}

TEST_CASE("no source file has grown past its one purpose", "[repository]") {
  for (const std::string& path : project_files()) {
    if (!path.starts_with("core/") || is_table(path) || path.ends_with(".md")) continue;
    const std::size_t lines = lines_of(project_file(path)).size();
    INFO(path);
    CHECK(lines <= too_long);
    if (lines > second_noun) WARN(path << " has " << lines << " lines: does it still have one purpose?");
  }
}

TEST_CASE("names are in lower case with underscores", "[repository]") {
  for (const std::string& path : project_files()) {
    if (!path.starts_with("core/") || path.ends_with(".md")) continue;
    const std::string name = path.substr(path.rfind('/') + 1);
    INFO(path);
    CHECK(std::all_of(name.begin(), name.end(),
                      [](unsigned char c) { return std::islower(c) || std::isdigit(c) || c == '_' || c == '.'; }));
  }
}

TEST_CASE("no file speaks of one machine or of what is none of the project's business", "[repository]") {
  // In two halves, so that this file does not hold them.
  const std::vector<std::string> words{
      std::string("tran") + "script",     std::string("you") + "tube",  std::string("deb.deb") + "ian.org",
      std::string("registry.") + "npmjs", std::string("/wo") + "rk/",   std::string("/ro") + "ot/",
      std::string("/tmp/") + "wt",        std::string("work") + "tree", std::string("/tmp/bash") + "_jobs"};
  for (const std::string& path : project_files()) {
    std::string text = project_file(path);
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    INFO(path);
    for (const std::string& word : words) {
      const std::size_t at = text.find(word);
      const bool longer_word =
          at != std::string::npos && at > 0 && word[0] == '/' &&
          (std::isalnum(static_cast<unsigned char>(text[at - 1])) != 0 || text[at - 1] == '.');
      CAPTURE(word);
      CHECK((at == std::string::npos || longer_word));
    }
  }
}
