#include <catch2/catch.hpp>

#include <string>

#include "tests/lua/hosting.h"

using namespace tamis;

namespace {

/// What an export whose function is `body` makes of a fiche.
std::string paper(const std::string& body, const std::string& fiche) {
  const tests::Loaded loaded =
      tests::load_plugin(tests::manifest_of("export"), "function paper(fiche)\n" + body + "\nend\n");
  REQUIRE(loaded.lines() == "");
  const lua::Exported made =
      loaded.plugin->export_fiche(loaded.plugin->manifest().additions.front(), tests::document_of(fiche), {},
                                  fiche::empty_library());
  for (const base::Finding& finding : made.findings) return finding.message;
  return made.files.front().bytes;
}

}  // namespace

TEST_CASE("a plugin reads a copy of the fiche in another system, the author's figures beside the new ones") {
  const std::string both = R"(
    local copy, told = fiche:converted("us")
    local milk, own = copy:find("milk"), fiche:find("milk")
    return own.own_text .. " | " .. milk.own_text .. " | " .. milk:get("was") .. " | " .. copy.system .. " " .. fiche.system ..
      " | " .. #told .. " | " .. tostring(copy == fiche))";
  CHECK(paper(both, tests::custard) == "300 g | 10\u00A0½\u00A0oz | 300 g | us metric | 0 | false");
  CHECK(paper("return tostring(fiche:converted('metric'):find('milk'):get('was'))", tests::custard) == "nil");
}

TEST_CASE("a fiche that does not say whose cups it means is not converted, and the plugin hears why") {
  const std::string cups = R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en"><title>A</title><component id="c" title="C">
    <ingredient food="milk-whole">1 cup</ingredient></component></fiche>)";
  CHECK(paper("local copy, why = fiche:converted('metric'); return tostring(copy) .. ': ' .. why", cups).starts_with("nil: "));
}

TEST_CASE("copies can't be piled up, and a system is one of three") {
  CHECK(paper("for i = 1, 17 do fiche:converted('us') end return ''", tests::custard).find("more than 16 conversions in one call") !=
        std::string::npos);
  CHECK(paper("fiche:converted('roman') return ''", tests::custard).find("roman") != std::string::npos);
}
