#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>

#include "core/lua/reference.h"
#include "core/lua/type_file.h"
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

TEST_CASE("schemas/tamis.lua is what the code says, and Lua") {
  const std::string made = lua::type_file();
  if (std::getenv("TAMIS_WRITE_REFERENCE") != nullptr)
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/schemas/tamis.lua", std::ios::binary) << made;
  CHECK((made == tests::project_file("schemas/tamis.lua")));
  // Compiled by the host, not run: it would take `tamis` away.
  const tests::Loaded loaded = tests::load_plugin(
      "<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"1\"><summary>A</summary><adds id=\"a\" kind=\"check\"/></manifest>",
      "function a(fiche) end\nlocal function never()\n" + made + "\nend");
  CHECK(loaded.lines() == "");
  for (const char* line : {"---@class tamis.amount\n", "---@field low number|nil the lower figure in g", "---@return tamis.element[]\n",
                           "function tamis.amount(text, system, language) end\n", "---@param language? string\n",
                           "---@return tamis.fiche|nil\n---@return string|nil\nfunction fiche:open(reference) end\n",
                           "---@param ... string\n---@return tamis.element[]\nfunction fiche:all(...) end\n",
                           "---@return number\n---@return number\nfunction thing:share_of(what) end\n",
                           "---@return tamis.amount|tamis.share|number|tamis.amount[]|nil\n---@return string|nil\nfunction element:value",
                           "---@return tamis.fiche|nil\n---@return string[]\nfunction fiche:converted(system) end\n",
                           "---@return table\n---@return string[]\n---@return boolean\nfunction fiche:allergens() end\n",
                           "---@return string[]\n---@return string[]\n---@return string[]\nfunction element:allergens() end\n"}) {
    CAPTURE(line);
    CHECK(made.find(line) != std::string::npos);
  }
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
  const std::string page = tests::project_file("README.md");
  const std::string heading = "## A rule of the house, in fifteen lines";
  const tests::Loaded loaded =
      tests::load_plugin(block_after(page, heading, "xml"), block_after(page, heading, "lua"));
  REQUIRE(loaded.lines() == "");
  CHECK(tests::said(*loaded.plugin, R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en">
  <title>A</title>
  <yield portions="8"><mould shape="frame" length="36 cm"/><mould shape="ring" diameter="8 cm"/></yield>
</fiche>)") == "3:23 depth-not-stated: the frame has no fill height [add fill=\"3 cm\": baking time hangs on it]\n");
}
