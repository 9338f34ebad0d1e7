#include <catch2/catch.hpp>

#include <string>
#include <utility>

#include "tests/lua/hosting.h"
#include "tests/shared_files.h"

using namespace tamis;
using tests::custard;

namespace {

/// What house-style says of a fiche under these settings ("a=1|b=2").
std::string style(const std::string& fiche, std::string_view settings) {
  const tests::Loaded loaded = tests::load_plugin(tests::project_file("plugins/house-style/plugin.xml"),
                                                  tests::project_file("plugins/house-style/plugin.lua"), settings);
  return loaded.plugin == nullptr ? loaded.lines() : tests::said(*loaded.plugin, fiche);
}

std::string titled(const std::string& title, const std::string& language = "en") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"" + language + "\">\n  <title>" + title + "</title>\n</fiche>\n";
}

}  // namespace

TEST_CASE("a house that sets nothing hears little") { CHECK(style(custard, "") == ""); }

TEST_CASE("titles are held to the house's form") {
  const std::pair<std::string, const char*> rows[] = {
      {titled("Walnut and coffee slice"), ""},
      {titled("Paris-Brest"), ""},
      {titled("Tarte Tatin"), ""},
      {titled("Île flottante à l'orange"), ""},
      {titled("Gefüllte Paprika mit Sauerrahm", "de"), ""},
      {titled("walnut slice"), "2:10 house-title: the title starts with a small letter [write \"W\"]\n"},
      {titled("éclair"), "2:10 house-title: the title starts with a small letter [write \"É\"]\n"},
      {titled("Walnut and Coffee Slice"),
       "2:10 house-title: every word of the title has a capital; this house writes titles like this one [leave the capital "
       "to the first word and to names]\n"},
  };
  for (const auto& [fiche, expected] : rows) {
    CAPTURE(fiche);
    CHECK(style(fiche, "") == expected);
  }
  CHECK(style(titled("Walnut and Coffee Slice"), "title-form=title") == "");
  CHECK(style(titled("Walnut and coffee slice"), "title-form=title") ==
        "2:10 house-title: 2 of the title's words start with a small letter; this house writes Titles Like This [give words "
        "of four letters or more a capital]\n");
  CHECK(style(titled("walnut"), "title-form=free") == "");
  CHECK(style(titled("Crème brûlée"), "title-length=11") ==
        "2:10 house-title: the title has 12 letters; the house's limit is 11 [shorten it, and put the rest into <summary>]\n");
  CHECK(style(titled("Crème brûlée"), "title-length=12") == "");
}

TEST_CASE("units that the house does not measure with are marked where they stand") {
  CHECK(style(custard, "units=g degc h min") == "");
  const std::string pounds = R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en" units="us">
  <title>A</title>
  <component id="c" title="C">
    <ingredient food="milk-whole">2 lb</ingredient>
    <step>Bake at <oven-temp mode="fan">350 °F</oven-temp> for <time>20 min</time>.</step>
  </component>
</fiche>)";
  CHECK(style(pounds, "units=g degc min") ==
        "4:35 house-unit: 2\u00A0lb: this house does not measure in lb [write 907\u00A0g]\n"
        "5:41 house-unit: 350\u00A0°F: this house does not measure in degf [write it in degc]\n");
}

TEST_CASE("steps are held to a length, what is no instruction left out") {
  CHECK(style(custard, "step-words=11") == "");
  CHECK(style(custard, "step-words=9") ==
        "6:5 house-step-length: 11 words in one step; this house stops at 9 [split it, or move what is no instruction into "
        "<why>]\n");
  CHECK(style(custard, "step-words=0") == "");
}

TEST_CASE("steps start with the house's verbs") {
  CHECK(style(custard, "verbs=pour chill") == "");
  CHECK(style(custard, "verbs=pour chil") ==
        "8:22 house-verb: the step starts with \"Chill\", which is none of the house's verbs [write \"chil\"]\n");
  CHECK(style(custard, "verbs=chill") ==
        "6:51 house-verb: the step starts with \"Pour\", which is none of the house's verbs [start with what the cook does: "
        "chill]\n");
}

TEST_CASE("what the house wants stated is asked for") {
  CHECK(style(custard, "required=title component/title") == "");
  CHECK(style(custard, "required=keep step/hands") ==
        "2:3 house-field: no <keep>: this house wants it on every fiche [add <keep>]\n"
        "8:5 house-field: <step> without hands: this house wants it stated [add hands=\"...\"]\n");
  CHECK(style(custard, "required=keeep").find("there is no kind of element \"keeep\"; the nearest is \"keep\"") !=
        std::string::npos);
}

TEST_CASE("words the house does not use are marked each time, whole words only") {
  const std::string fiche = R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en">
  <title>A bit</title>
  <component id="c" title="C">
    <step>Cook Until
      done with a bit of salt; a bittern is no bit.</step>
  </component>
</fiche>)";
  CHECK(style(fiche, "instead-of=until done: what it looks like; bit") ==
        "2:12 house-word: \"bit\" is not said in this house [say it otherwise]\n"
        "4:16 house-word: \"Until done\" is not said in this house [write what it looks like]\n"
        "5:19 house-word: \"bit\" is not said in this house [say it otherwise]\n"
        "5:48 house-word: \"bit\" is not said in this house [say it otherwise]\n");
  CHECK(style(fiche, "instead-of=5 % (of it): so").empty());
}

TEST_CASE("the same in JSON is said at its place there") {
  CHECK(style(R"({"fiche": {"id": "a", "lang": "en", "content": [{"title": "walnut slice"}]}})", "").find(
            "house-title: the title starts with a small letter") != std::string::npos);
}
