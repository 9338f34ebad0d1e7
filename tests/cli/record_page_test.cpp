#include <catch2/catch.hpp>

#include <memory>
#include <string>

#include "core/cli/record_of.h"
#include "core/format/format.h"

using namespace tamis;

namespace {

std::string page(const std::string& title, const std::string& control, const std::string& language = "en") {
  const std::string xml = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"" + language + "\"><title>" + title +
                          "</title><component id=\"c\" title=\"Part\"><step>Cook." + control + "</step></component></fiche>";
  const auto document = format::read(std::make_shared<const base::Source>("f.fiche.xml", xml)).document;
  REQUIRE(document != nullptr);
  const fiche::Kitchen kitchen;
  const fiche::Fiche fiche = fiche::read_fiche(*document, kitchen);
  return cli::blank_html(fiche, record::control_points(fiche));
}

}  // namespace

TEST_CASE("the page of a batch record holds what a fiche says as text, and needs nothing else") {
  const std::string made = page("&lt;script&gt;alert(1)&lt;/script&gt; &amp; \"x\"",
                                "<control hazard=\"a &lt;b&gt;\">No <food-temp>at least 70 °C</food-temp> &amp; on.</control>");
  CHECK(made.find("<script") == std::string::npos);
  CHECK(made.find("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;x&quot;</h1>") != std::string::npos);
  CHECK(made.find("Control point 1: a &lt;b&gt;</h2>") != std::string::npos);
  for (const char* outside : {"http:", "https:", " src=", " href=", "url(", "@import"})
    CHECK(made.find(outside) == std::string::npos);
}

TEST_CASE("the page of a batch record is well-formed") {
  std::string made = page("Roast", "<control>At <food-temp>at least 70 °C</food-temp>.</control><control>No shell.</control>");
  made.erase(0, std::string("<!DOCTYPE html>\n").size());
  const format::Read read = format::read(std::make_shared<const base::Source>("page.xml", made));
  for (const base::Finding& finding : read.findings) CHECK(finding.rule != "not-well-formed");
  CHECK(made.find("yes / no") != std::string::npos);
}

TEST_CASE("the page of a batch record speaks the language of its fiche") {
  const std::string control =
      "<control>Refroidir à <food-temp>au plus 10 °C</food-temp> en moins de <time>2 h</time>.</control>";
  const std::string french = page("Ragoût", control, "fr-CA");
  CHECK(french.find("<html lang=\"fr\">") != std::string::npos);
  CHECK(french.find("Point de contrôle 1</h2>") != std::string::npos);
  CHECK(french.find("<dt>où</dt><dd>Part, étape 1</dd>") != std::string::npos);
  CHECK(french.find("<th scope=\"row\">au plus 10 °C en 2 h au plus</th>") != std::string::npos);
  CHECK(page("X", "", "de").find("Chargenprotokoll") != std::string::npos);
  CHECK(page("X", "", "es").find("Registro del lote") != std::string::npos);
  CHECK(page("X", "", "nl").find("<html lang=\"en\">") != std::string::npos);
}
