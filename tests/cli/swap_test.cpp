#include <catch2/catch.hpp>

#include "tests/cli/process.h"

using namespace tamis::tests;

namespace {

std::string fiche_with(const std::string& lines) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\">\n<title>T</title>\n<component id=\"c\" title=\"C\">\n" +
         lines +
         "\n<step do=\"melt\">Melt <use of=\"butter\">the butter</use> <until>until "
         "clear</until>.</step>\n</component>\n</fiche>\n";
}

const std::string butter = fiche_with("<ingredient id=\"butter\" food=\"butter-unsalted\" name=\"butter\">250 g</ingredient>");

}  // namespace

TEST_CASE("a swap is written and taken back at the desk", "[cli]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", butter);
  const auto at = [&](std::vector<std::string> words) { return run_tamis(words, "", folder.path()); };
  const Ran there = at({"convert", "--swap", "butter=clarified butter", "--write", "a.fiche.xml"});
  CHECK(there.exit == 0);
  CHECK(there.err.find("\"butter\" becomes \"clarified butter\": 204") != std::string::npos);
  CHECK(there.err.find("a.fiche.xml:5:22: the sentence says \"the butter\"") != std::string::npos);
  CHECK(folder.read("a.fiche.xml").find("was-food=\"butter-unsalted\">204") != std::string::npos);
  const Ran back = at({"convert", "--swap", "butter=butter-unsalted", "--write", "a.fiche.xml"});
  CHECK(back.exit == 0);
  CHECK(folder.read("a.fiche.xml") == butter);
}

TEST_CASE("a swap that makes no sense is refused with the nearest word, exit 2, and nothing is printed", "[cli]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", butter);
  const std::pair<std::vector<std::string>, const char*> rows[] = {
      {{"convert", "--swap", "butter", "a.fiche.xml"},
       "tamis: \"butter\" says no food that stands in\n  → write it LINE=FOOD, with a figure behind a colon: --swap "
       "leaf=gelatine-powder:225\n"},
      {{"convert", "--swap", "buter=butter-clarified", "a.fiche.xml"},
       "tamis: a.fiche.xml: no line of the ingredients is \"buter\"\n  → did you mean \"butter\"?\n"},
      {{"convert", "--swap", "butter=butter-clarifed", "a.fiche.xml"},
       "tamis: a.fiche.xml: no food is called \"butter-clarifed\"\n  → did you mean \"butter-clarified\"?\n"},
      {{"convert", "a.fiche.xml"},
       "tamis: say what is wanted: --units metric, us or imperial; --by, --oven, --for, --swap or --with\n"},
      {{"convert", "--swap", "butter=butter-clarified", "--with", "loud", "a.fiche.xml"},
       "tamis: --with and --swap are two conversions: do one, then the other\n"},
  };
  for (const auto& [words, says] : rows) {
    const Ran ran = run_tamis(words, "", folder.path());
    CAPTURE(words);
    CHECK(ran.exit == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err == says);
  }
}

TEST_CASE("in a folder a swap is for the fiches that have the line", "[cli]") {
  const TemporaryFolder folder;
  folder.write("in/a.fiche.xml", butter);
  const std::string other =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"b\" lang=\"en\">\n<title>T</title>\n<component id=\"c\" title=\"C\">\n"
      "<step>Rest.</step>\n</component>\n</fiche>\n";
  folder.write("in/b.fiche.xml", other);
  const Ran ran = run_tamis({"convert", "--swap", "butter=butter-clarified", "--write", "in"}, "", folder.path());
  CHECK(ran.exit == 0);
  CHECK(folder.read("in/a.fiche.xml") != butter);
  CHECK(folder.read("in/b.fiche.xml") == other);
  const Ran none = run_tamis({"convert", "--swap", "leaf=gelatine-powder", "--write", "in"}, "", folder.path());
  CHECK(none.exit == 2);
  CHECK(none.err == "tamis: none of these fiches has the line that \"leaf=gelatine-powder\" names\n");
}

TEST_CASE("a fiche goes into other units and other foods in one run, and home again", "[cli]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", butter);
  const Ran there =
      run_tamis({"convert", "--units", "us", "--swap", "butter=butter-clarified", "a.fiche.xml"}, "", folder.path());
  CHECK(there.exit == 0);
  folder.write("b.fiche.xml", there.out);
  CHECK(there.out.find("units=\"us\" was-units=\"none\"") != std::string::npos);
  CHECK(there.out.find("was=\"250 g\"") != std::string::npos);
  CHECK(run_tamis({"convert", "--units", "metric", "b.fiche.xml"}, "", folder.path()).out == butter);
}
