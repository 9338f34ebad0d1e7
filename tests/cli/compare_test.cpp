#include <catch2/catch.hpp>
#include <string>

#include "tests/cli/process.h"

using namespace tamis::tests;

namespace {

std::string fiche(const std::string& id, const std::string& revision, const std::string& state, const std::string& sugar) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"" + id + "\" revision=\"" + revision + "\" state=\"" + state +
         "\" lang=\"en\"><title>T</title><component id=\"c\" title=\"C\"><ingredient food=\"sugar-white\" name=\"sugar\">" +
         sugar + "</ingredient></component></fiche>\n";
}

}  // namespace

TEST_CASE("one fiche alone is held against the highest released revision below its own", "[cli]") {
  const TemporaryFolder folder;
  const std::string own = folder.write("tart.fiche.xml", fiche("tart", "5", "tested", "150 g"));
  folder.write("revisions/any-name.fiche.xml", fiche("tart", "2", "released", "120 g"));
  folder.write("kept.fiche.xml", fiche("tart", "3", "released", "130 g"));
  folder.write("revisions/deep/draft.fiche.xml", fiche("tart", "4", "draft", "140 g"));
  folder.write("revisions/later.fiche.xml", fiche("tart", "6", "released", "160 g"));
  folder.write("revisions/other.fiche.xml", fiche("flan", "4", "released", "145 g"));
  folder.write("revisions/broken.fiche.xml", "<fiche");
  folder.write("elsewhere/tart.fiche.xml", fiche("tart", "4", "released", "140 g"));
  const Ran ran = run_tamis({"compare", own});
  CHECK(ran.exit == 1);
  CHECK(ran.out.find("15 % more sugar: 150 g, was 130 g") != std::string::npos);
  CHECK(run_tamis({"compare", "tart.fiche.xml"}, "", folder.path()).out.find("  against kept.fiche.xml, revision 3, released\n") !=
        std::string::npos);
  folder.write("revisions/deep/draft.fiche.xml", fiche("tart", "4", "released", "140 g"));
  CHECK(run_tamis({"compare", own}).out.find("was 140 g") != std::string::npos);
}

TEST_CASE("comparing ends with 0 when nothing changed, 1 when something did, 2 when it could not be done", "[cli]") {
  const TemporaryFolder folder;
  folder.write("a.fiche.xml", fiche("tart", "1", "tested", "1000 g"));
  folder.write("b.fiche.xml", fiche("tart", "1", "tested", "1 kg"));
  folder.write("c.fiche.xml", fiche("tart", "1", "tested", "2 kg"));
  folder.write("broken.fiche.xml", "<fiche");
  const auto ran = [&](const std::vector<std::string>& words) {
    std::vector<std::string> all{"compare"};
    all.insert(all.end(), words.begin(), words.end());
    return run_tamis(all, "", folder.path());
  };
  CHECK(ran({"a.fiche.xml", "b.fiche.xml"}).exit == 0);
  CHECK(ran({"a.fiche.xml", "b.fiche.xml"}).out.empty());
  CHECK(ran({"a.fiche.xml", "c.fiche.xml"}).exit == 1);
  CHECK(ran({"a.fiche.xml"}).exit == 2);
  CHECK(ran({"a.fiche.xml"}).err ==
        "tamis: no released revision of \"tart\" below 1 beside it or in revisions\n  → keep what is released in a folder "
        "\"revisions\" beside the fiche, under any name, or name both: tamis compare OLD NEW\n");
  CHECK(ran({"broken.fiche.xml", "a.fiche.xml"}).exit == 2);
  CHECK(ran({"gone.fiche.xml", "a.fiche.xml"}).err == "tamis: gone.fiche.xml: cannot be read: there is no such file\n");
  CHECK(ran({"-", "a.fiche.xml"}).exit == 2);
  CHECK(ran({"a.fiche.xml", "b.fiche.xml", "c.fiche.xml"}).exit == 2);
  CHECK(ran({}).exit == 2);
}
