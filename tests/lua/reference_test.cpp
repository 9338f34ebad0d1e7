#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>

#include "core/lua/reference.h"
#include "tests/lua/hosting.h"
#include "tests/shared_files.h"

using namespace tamis;

namespace {

/// The README with what stands between two comments replaced.
std::string with(const std::string& page, const std::string& begin, const std::string& end, const std::string& made) {
  const std::size_t from = page.find(begin);
  const std::size_t to = page.find(end);
  REQUIRE(from != std::string::npos);
  REQUIRE(to != std::string::npos);
  return page.substr(0, from + begin.size()) + made + page.substr(to);
}

}  // namespace

// To accept what the code says now: TAMIS_WRITE_REFERENCE=1 tests_lua
TEST_CASE("the tables of plugins/README.md are the code's own") {
  const std::string page = tests::project_file("plugins/README.md");
  std::string made = with(page, "<!-- values: made from core/lua/api.inc -->\n", "<!-- end of values -->",
                          lua::values_reference());
  made = with(made, "<!-- globals: made from core/lua/globals.inc -->\n", "<!-- end of globals -->",
              lua::globals_reference());
  if (std::getenv("TAMIS_WRITE_REFERENCE") != nullptr && made != page)
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/plugins/README.md", std::ios::binary) << made;
  CHECK((made == page));
}

namespace {

/// The text of the first code block that starts with ```LANGUAGE behind `heading`.
std::string block_after(const std::string& page, const std::string& heading, const std::string& language) {
  const std::size_t start = page.find("```" + language + "\n", page.find(heading));
  REQUIRE(start != std::string::npos);
  const std::size_t from = start + 4 + language.size();
  return page.substr(from, page.find("```", from) - from);
}

}  // namespace

TEST_CASE("the plugin of fifteen lines in the README works as it says") {
  const std::string page = tests::project_file("plugins/README.md");
  const tests::Loaded loaded =
      tests::load_plugin(block_after(page, "## Fifteen lines", "xml"), block_after(page, "## Fifteen lines", "lua"));
  REQUIRE(loaded.lines() == "");
  CHECK(tests::said(*loaded.plugin, R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en">
  <title>A</title>
  <yield portions="8"><mould shape="frame" length="36 cm"/><mould shape="ring" diameter="8 cm"/></yield>
</fiche>)") == "3:23 depth-not-stated: the frame has no fill height [add fill=\"3 cm\": baking time hangs on it]\n");
}
