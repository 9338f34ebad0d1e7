#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

// The export "card": Markdown. That it reads as CommonMark is asked of a library in tests/lua/card_in_commonmark.mjs.

using namespace tamis;
using tests::project_file;

namespace {

namespace fs = std::filesystem;

std::string card_of(const std::string& fiche, const std::string& path = "a.fiche.xml", std::string_view settings = {}) {
  const tests::Loaded loaded = tests::load_boxed("card", settings);
  REQUIRE(loaded.lines() == "");
  tests::TallyLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  const lua::Exported out = loaded.plugin->export_fiche(loaded.plugin->manifest().additions.front(), document, tests::demo_kitchen(), library);
  for (const base::Finding& finding : out.findings) UNSCOPED_INFO(finding.message);
  CHECK(out.findings.empty());
  REQUIRE(out.files.size() == 1);
  return out.files.front().bytes;
}

void check_kept(const std::string& name, const std::string& made) {
  const std::string path = "tests/lua/card/" + name;
  if (std::getenv("TAMIS_WRITE_GOLDEN") != nullptr) std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/" + path, std::ios::binary) << made;
  CAPTURE(name);
  CHECK((made == project_file(path)));
}

std::string cream(const std::string& inside, const std::string& attributes = "lang=\"en\" units=\"metric\"") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" " + attributes + "><title>Cream</title><component id=\"c\" title=\"Cream\">" + inside +
         "</component></fiche>";
}

/// The card behind the allergens.
std::string below(const std::string& card) {
  const std::size_t from = card.find("\n\n- ");
  return from == std::string::npos ? card : card.substr(from + 2);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("cards of the demo kitchen read as they are kept") {
  for (const char* fiche : {"base/custard", "desserts/damson-almond-tart", "desserts/quince-hazelnut-bay", "mains/duck-breast-chips"}) {
    const std::string path = "tests/kitchen/" + std::string(fiche) + ".fiche.xml";
    check_kept(fs::path(fiche).filename().string() + ".md", card_of(project_file(path), path));
  }
}

TEST_CASE("a card of every fiche of the project is made, in both wordings") {
  int count = 0;
  for (const char* place : {"tests/kitchen", "tests/against/real", "tests/lua/sheet", "schemas"}) {
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(TAMIS_SOURCE_DIR) / place)) {
      const std::string path = fs::relative(entry.path(), TAMIS_SOURCE_DIR).string();
      if (!path.ends_with(".fiche.xml")) continue;
      CAPTURE(path);
      for (const char* settings : {"", "wording=short"}) {
        const std::string card = card_of(project_file(path), path, settings);
        CHECK(card.starts_with("# "));
        CHECK(base::find_invalid_utf8(card) == std::string::npos);
        ++count;
      }
    }
  }
  CHECK(count > 40);
}

TEST_CASE("what a divided ingredient gives stands in the sentence; what is used whole does not") {
  const std::string list = "<ingredient id=\"milk\" food=\"milk-whole\" name=\"milk\">300 g</ingredient>";
  CHECK(below(card_of(cream(list + "<step do=\"boil\" makes=\"m\">Boil the <use of=\"milk\">milk</use>.</step>"))) == "- 300\u00A0g milk\n\n1. Boil the milk.\n");
  CHECK(below(card_of(cream(list + "<step do=\"boil\" makes=\"m\">Boil <use of=\"milk\" take=\"1/3\">a third of the milk</use>.</step>"
                                   "<step>Add <use of=\"milk\" take=\"the rest\">the rest</use> to the <use of=\"m\">milk</use>.</step>"))) ==
        "- 300\u00A0g milk\n\n1. Boil a third of the milk (100\u00A0g).\n2. Add the rest (200\u00A0g) to the milk.\n");
}

TEST_CASE("gates and temperatures are bold, and stay in the short wording") {
  const std::string step = "<step makes=\"m\">Cook to <food-temp>82–84 °C</food-temp>.<short>Cook.</short><why>It sets.</why><rescue when=\"it splits\">Blend."
                           "</rescue><gate>Below <food-temp>30 °C</food-temp>.</gate><control hazard=\"growth\" check=\"probe\" action=\"discard\">At most "
                           "<food-temp>5 °C</food-temp>.</control></step>";
  const std::string full = card_of(cream(step));
  CHECK(has(full, "1. Cook to **82–84\u00A0°C**.\n\n   **If it splits:** Blend.\n\n   **Before going on:** Below **30\u00A0°C**.\n\n   **Control point, "
                  "growth:** At most **5\u00A0°C**. Check: probe; if not: discard.\n"));
  CHECK_FALSE(has(full, "It sets"));
  const std::string brief = card_of(cream(step), "a.fiche.xml", "wording=short");
  CHECK(has(brief, "1. Cook.\n\n   **Before going on:** Below **30\u00A0°C**.\n\n   **Control point, growth:** At most **5\u00A0°C**. Check: probe; if not: discard.\n"));
}

TEST_CASE("what the author writes is never markup of the card") {
  const std::string list = "<ingredient id=\"a\" name=\"*salt* &lt;b> [x](y) `c` _d_ | ~e~ &amp;amp; \\\">2</ingredient>";
  CHECK(below(card_of(cream(list + "<step>1. # Stir.</step><step># Stir.</step><step>- Stir</step><step>+ Stir</step><step>==</step><step>12) Stir</step><step>-5 is cold.</step><step>1.5 is more than 1.</step>"))) ==
        "- 2 \\*salt\\* \\<b\\> \\[x\\](y) \\`c\\` \\_d\\_ \\| \\~e\\~ \\&amp; \\\\\n\n"
        "1. 1\\. # Stir.\n2. \\# Stir.\n3. \\- Stir\n4. \\+ Stir\n5. \\==\n6. 12\\) Stir\n7. -5 is cold.\n8. 1.5 is more than 1.\n");
}

TEST_CASE("a card speaks the language of its fiche, and says that nothing is stated where nothing is") {
  const std::string fiche = cream("<ingredient id=\"a\" name=\"lait\" prep=\"froid\">2 l</ingredient><step on=\"fridge\" unattended=\"2 h\">Laisser prendre.</step>",
                                  "lang=\"fr\" units=\"metric\" state=\"draft\"");
  const std::string card = card_of(fiche);
  CHECK(has(card, "**Brouillon\u00A0: fiche en cours d’écriture.**"));
  CHECK(has(card, "**Allergènes\u00A0:** L’auteur n’en indique pas. Cela ne veut pas dire qu’il n’y en a pas."));
  CHECK(has(card, "1. Laisser prendre. (au réfrigérateur, 2\u00A0h)\n"));
}
