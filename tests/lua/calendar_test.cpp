#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

// The export "calendar". tests/lua/calendar_read.py holds it against an independent reader.

using namespace tamis;
using tests::project_file;

namespace {

struct Made {
  std::string bytes, findings;
};

Made calendar(const std::vector<std::pair<std::string, std::string>>& fiches, std::string_view settings = "service=2026-03-07T19:00",
              const fiche::Kitchen& kitchen = {}) {
  const tests::Loaded loaded = tests::load_boxed("calendar", settings);
  REQUIRE(loaded.lines() == "");
  tests::TallyLibrary library;
  std::vector<std::shared_ptr<const fiche::Document>> documents;
  for (const auto& [path, text] : fiches) {
    documents.push_back(tests::document_of(text, path));
    REQUIRE(documents.back() != nullptr);
    library.texts[path] = text;
  }
  const lua::ExportedAll made = loaded.plugin->export_all(loaded.plugin->manifest().additions.front(), documents, kitchen, library);
  Made out;
  for (const auto& findings : made.findings)
    for (const base::Finding& finding : findings) out.findings += finding.message + "\n";
  if (!made.files.empty()) out.bytes = made.files.front().bytes;
  return out;
}

std::string bare(const std::string& id, const std::string& title, const std::string& inside) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"" + id + "\" lang=\"en\" units=\"metric\"><title>" + title + "</title>" + inside + "</fiche>";
}

const std::string soup = bare("soup", "Soup; cold, clear", R"(<component id="base" title="Base"><ingredient id="m" food="milk-whole">1 kg</ingredient>
<step do="boil" makes="hot" hands="10 min">Boil the <use of="m">milk</use>.</step>
<step do="chill" makes="cold" unattended="2 h">Chill the <use of="hot">milk</use>.<control hazard="growth of bacteria" action="discard">at most <food-temp>4 °C</food-temp></control></step>
<step do="serve" on="bench">Ladle the <use of="cold">milk</use>.<gate>The bowls are cold.</gate></step></component>)");

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

// Service at 19:00; ladling states no time, so it stands there with none; chilling 2 h before, boiling 10 min before that.
TEST_CASE("a calendar is laid backwards from service, folded and escaped") {
  const Made made = calendar({{"soup.fiche.xml", soup}});
  CHECK(made.findings == "this step states no time; the calendar gives it none\n");
  CHECK(made.bytes ==
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Tamis//calendar 1//EN\r\nCALSCALE:GREGORIAN\r\n"
        "BEGIN:VEVENT\r\nUID:soup.base.1.20260307@kitchen.invalid\r\nDTSTAMP:20260307T190000Z\r\n"
        "DTSTART:20260307T165000\r\nDTEND:20260307T170000\r\nSUMMARY:Base: boil – Soup\\; cold\\, clear\r\n"
        "DESCRIPTION:Boil the milk.\\n10 min hands-on\r\nCATEGORIES:Soup\\; cold\\, clear\r\nEND:VEVENT\r\n"
        "BEGIN:VEVENT\r\nUID:soup.base.2.20260307@kitchen.invalid\r\nDTSTAMP:20260307T190000Z\r\n"
        "DTSTART:20260307T170000\r\nDTEND:20260307T190000\r\nSUMMARY:Base: chill – Soup\\; cold\\, clear\r\n"
        "DESCRIPTION:Chill the milk.\\nControl point: at most 4 °C\\nOtherwise: disca\r\n rd\\n2 h waiting\r\n"
        "CATEGORIES:Soup\\; cold\\, clear\r\nEND:VEVENT\r\n"
        "BEGIN:VEVENT\r\nUID:soup.base.3.20260307@kitchen.invalid\r\nDTSTAMP:20260307T190000Z\r\n"
        "DTSTART:20260307T190000\r\nSUMMARY:Base: serve – Soup\\; cold\\, clear\r\n"
        "DESCRIPTION:Ladle the milk.\\nBefore going on: The bowls are cold.\\nno time \r\n stated\r\n"
        "LOCATION:bench\r\nCATEGORIES:Soup\\; cold\\, clear\r\nEND:VEVENT\r\n"
        "BEGIN:VEVENT\r\nUID:soup.service.20260307@kitchen.invalid\r\nDTSTAMP:20260307T190000Z\r\nDTSTART:20260307T190000\r\n"
        "SUMMARY:Service: Soup\\; cold\\, clear\r\nCATEGORIES:Soup\\; cold\\, clear\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n");
}

// 2028 is a leap year: 1 March, less a day's chilling, is 29 February; 1 January less one is 31 December; 2100 is none.
TEST_CASE("days are reckoned over the ends of months and years") {
  std::string longer = soup;
  longer.replace(longer.find("2 h"), 3, "20 h");
  const auto begins = [&](const std::string& day) {
    const std::string bytes = calendar({{"soup.fiche.xml", longer}}, "service=" + day + "T12:00").bytes;
    return bytes.substr(bytes.find("DTSTART:") + 8, 15);
  };
  CHECK(begins("2028-03-01") == "20280229T155000");
  CHECK(begins("2026-03-01") == "20260228T155000");
  CHECK(begins("2100-03-01") == "21000228T155000");
  CHECK(begins("2027-01-01") == "20261231T155000");
  CHECK(begins("2026-12-31") == "20261230T155000");
}

TEST_CASE("without a day of service no calendar is made") {
  CHECK(calendar({{"soup.fiche.xml", soup}}, "").findings == "it is not said when the dish is served\n");
  for (const char* wrong : {"2026-02-29T19:00", "2026-13-01T19:00", "2026-03-07T24:00", "2026-03-07T19", "Saturday", "2026-03-07"}) {
    CAPTURE(wrong);
    const Made made = calendar({{"soup.fiche.xml", soup}}, std::string("service=") + wrong);
    CHECK(made.bytes == "");
    CHECK(made.findings == "service is \"" + std::string(wrong) + "\", which is no day and time\n");
  }
  const fiche::Kitchen kitchen = tests::kitchen_with(R"(<service id="lunch" from="12:15"/>)");
  CHECK(has(calendar({{"soup.fiche.xml", soup}}, "service=2026-03-07", kitchen).bytes, "DTSTART:20260307T121500\r\n"));
}

// The dish takes the soup at 18:30, so the soup is ladled then and not at 19:00.
TEST_CASE("a base named beside its dish is ready when the dish takes it") {
  const std::string dish = bare("dish", "Dish", R"(<component id="p" title="Plate"><ingredient id="s" name="soup" from="soup.fiche.xml#base">500 g</ingredient>
<step do="dress" hands="30 min">Dress the <use of="s">soup</use>.</step></component>)");
  const Made made = calendar({{"dish.fiche.xml", dish}, {"soup.fiche.xml", soup}});
  CHECK(has(made.bytes, "DTSTART:20260307T183000\r\nSUMMARY:Have ready: 500 g soup – Dish\r\n"));
  CHECK(has(made.bytes, "DTSTART:20260307T163000\r\nDTEND:20260307T183000\r\nSUMMARY:Base: chill"));
  CHECK(!has(made.bytes, "Service: Soup"));
  CHECK(has(made.bytes, "Service: Dish"));
}

TEST_CASE("the calendar of a two-day dish reads as it is kept") {
  const std::string path = "tests/kitchen/desserts/quince-hazelnut-bay.fiche.xml";
  const Made made = calendar({{path, project_file(path)}}, "service=2026-03-07T19:00", tests::demo_kitchen());
  CHECK(made.findings == "");
  const std::string kept = "tests/lua/calendar/quince-hazelnut-bay.ics";
  if (std::getenv("TAMIS_WRITE_GOLDEN") != nullptr) std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/" + kept, std::ios::binary) << made.bytes;
  CHECK((made.bytes == project_file(kept)));
}
