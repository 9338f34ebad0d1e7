#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>

#include "core/format/format.h"
#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

// The export "control-points": one page, kept whole beside the tests but for its looks.

using namespace tamis;
using tests::project_file;

namespace {

std::string sheet_of(const std::string& fiche, const std::string& path = "a.fiche.xml") {
  const tests::Loaded loaded = tests::load_boxed("control-points", "");
  REQUIRE(loaded.lines() == "");
  tests::TallyLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  const lua::Exported out =
      loaded.plugin->export_fiche(loaded.plugin->manifest().additions.front(), document, fiche::Kitchen{}, library);
  for (const base::Finding& finding : out.findings) UNSCOPED_INFO(finding.message);
  REQUIRE(out.findings.empty());
  REQUIRE(out.files.size() == 1);
  std::string html = out.files.front().bytes;
  const std::size_t style = html.find("<style>");
  return html.erase(style, html.find("</style>") - style);
}

std::string stew(const std::string& attributes, const std::string& control) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" " + attributes +
         "><title>Stew &amp; &lt;b&gt;</title><component id=\"c\" title=\"Stew\"><step>Cook." + control +
         "</step></component></fiche>";
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("the control points of a dish stand in the order of its work, those of other files first") {
  // TAMIS_WRITE_GOLDEN=1 accepts what comes of it now.
  const std::string path = "tests/lua/control-points/quince-hazelnut-bay.html";
  const std::string made = sheet_of(project_file("tests/kitchen/desserts/quince-hazelnut-bay.fiche.xml"),
                                    "tests/kitchen/desserts/quince-hazelnut-bay.fiche.xml");
  if (std::getenv("TAMIS_WRITE_GOLDEN") != nullptr)
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/" + path, std::ios::binary) << made;
  CHECK((made == project_file(path)));
  CHECK(has(made, "made by the fiche &quot;Vanilla custard&quot;"));
}

TEST_CASE("what a control point lacks is left to be written, and the hold of a temperature is said") {
  const std::string made = sheet_of(
      stew("lang=\"en\" state=\"tested\"",
           "<control hazard=\"germs\" who=\" \">Reaches <food-temp for=\"4 min\">at least 63 °C</food-temp>.</control>"));
  CHECK(has(made, "<span>Reaches at least 63\xC2\xA0°C. (at least 63\xC2\xA0°C: held 4\xC2\xA0min)</span>"));
  std::size_t blanks = 0;
  for (std::size_t at = made.find("class=\"blank\""); at != std::string::npos; at = made.find("class=\"blank\"", at + 1))
    ++blanks;
  CHECK(blanks == 5);  // check, often, who, action, record
  CHECK_FALSE(has(made, "class=\"draft\""));
  CHECK(has(made, "Stew &amp; &lt;b&gt;</h1>"));
}

TEST_CASE("a draft, a fiche without control points and a file that cannot be read are said") {
  CHECK(has(sheet_of(stew("lang=\"en\"", "<control>Hot.</control>")), "A draft: do not work from it."));
  CHECK(has(sheet_of(stew("lang=\"en\" state=\"released\"", "")),
            "The fiche states no control point. That does not mean that none is needed."));
  const std::string missing = sheet_of(
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><title>A</title><component id=\"c\" title=\"Custard\" "
      "from=\"none.fiche.xml\"/></fiche>");
  CHECK(has(missing, "its control points are not on this sheet: Custard."));
}

TEST_CASE("the sheet never says that food is safe, and always who decides, in four languages") {
  const std::string control = "<control hazard=\"germs\">Hot.</control>";
  for (const auto& [language, decides] :
       {std::pair{"en", "local rules"}, std::pair{"fr", "Les règles locales"}, std::pair{"de", "örtliches Recht"},
        std::pair{"es", "Las normas locales"}, std::pair{"nl", "local rules"}}) {
    const std::string made = sheet_of(stew("lang=\"" + std::string(language) + "\" state=\"tested\"", control));
    CAPTURE(language);
    CHECK(has(made, decides));
    CHECK_FALSE(has(made, " safe."));
    CHECK_FALSE(has(made, "is safe"));
  }
}
