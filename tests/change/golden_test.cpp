#include <cstdlib>
#include <fstream>

#include "core/rules/rule.h"
#include "tests/change/swapping.h"
#include "tests/shared_files.h"

using namespace tamis;
using namespace tamis::tests;

// A whole fiche and what a reader elsewhere is given of it. TAMIS_WRITE_GOLDEN=1 writes the expected files anew; read the
// difference before it is committed.

namespace {

const std::string folder = "tests/change/golden/";

const std::string swaps = "butter=butter-clarified; eggs=egg-whole-frozen; milk=milk-semi-skimmed:1.5+cream-35; leaf=gelatine-powder:225; "
                          "whipped=cream-double:48+milk-whole:3.5";

std::string findings_text(const Result& result, const std::string& own) {
  const base::Source source("hazelnut-set-cream.fiche.xml", own);
  std::string out;
  for (const base::Finding& finding : result.findings) {
    const base::Place place = source.place(finding.where.begin);
    out += std::to_string(place.line) + ":" + std::to_string(place.column) + " " +
           std::string(base::severity_name(finding.severity)) + " " + finding.rule + ": " + finding.message + " | " +
           finding.advice + "\n";
  }
  return out;
}

void check_file(const std::string& name, const std::string& made) {
  if (std::getenv("TAMIS_WRITE_GOLDEN") != nullptr) {
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/" + folder + name, std::ios::binary) << made;
  }
  CAPTURE(name);
  CHECK(made == project_file(folder + name));
}

}  // namespace

TEST_CASE("a whole fiche in US measures, for a fan oven and what is sold there, and back") {
  const std::string own = project_file(folder + "hazelnut-set-cream.fiche.xml");
  REQUIRE_FALSE(own.empty());
  const Result made = converted(own, {System::us, By::both, "fan", "US"});
  check_file("hazelnut-set-cream.us.fiche.xml", made.xml);
  check_file("hazelnut-set-cream.us.findings.txt", findings_text(made, own));
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
  const fiche::Kitchen kitchen;
  for (const base::Finding& finding : rules::check(*document_of(made.xml), kitchen, fiche::empty_library())) {
    CAPTURE(finding.rule, finding.message);
    CHECK(finding.severity == base::Severity::advice);
  }
}

TEST_CASE("a whole fiche with five foods swapped, and back") {
  const std::string own = project_file(folder + "hazelnut-set-cream.fiche.xml");
  const Result made = swapped(own, swaps);
  check_file("hazelnut-set-cream.swapped.fiche.xml", made.xml);
  check_file("hazelnut-set-cream.swapped.findings.txt", findings_text(made, own));
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
  CHECK(converted(converted(made.xml, wish(System::us)).xml, wish(System::metric)).xml == own);
}

TEST_CASE("the same fiche spelled in JSON goes there and back as well") {
  const std::string own = format::lay_out(*document_of(project_file(folder + "hazelnut-set-cream.fiche.xml")), fiche::Spelling::json);
  const auto read = [](const std::string& json) {
    auto got = format::read_json(std::make_shared<base::Source>("h.fiche.json", json));
    REQUIRE(got.document != nullptr);
    return got.document;
  };
  const fiche::Kitchen kitchen;
  for (const System units : {System::us, System::imperial}) {
    for (const char* market : {"", "US"}) {
      const change::Converted made = change::convert(*read(own), kitchen, {units, By::as_written, "fan", market});
      const std::string there = format::write(made.document);
      CHECK(there != own);
      // An element spelled as a bare string stays an object once it had attributes; laid out, all is as it was.
      const change::Converted home = change::convert(*read(there), kitchen, wish(System::metric));
      const std::string back = format::lay_out(*read(format::write(home.document)), fiche::Spelling::json);
      CAPTURE(there);
      CHECK(back == own);
    }
  }
}
