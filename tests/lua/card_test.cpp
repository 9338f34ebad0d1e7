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

// The exports "card" (Markdown) and "web" (a page with schema.org terms in it). What libraries from outside say of them is
// asked in card_in_commonmark.mjs and page_in_chromium.mjs.

using namespace tamis;
using tests::project_file;

namespace {

namespace fs = std::filesystem;

std::string made_of(std::size_t addition, const std::string& fiche, const std::string& path, std::string_view settings) {
  const tests::Loaded loaded = tests::load_boxed("card", settings);
  REQUIRE(loaded.lines() == "");
  tests::TallyLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  const lua::Exported out = loaded.plugin->export_fiche(loaded.plugin->manifest().additions.at(addition), document, tests::demo_kitchen(), library);
  for (const base::Finding& finding : out.findings) UNSCOPED_INFO(finding.message);
  CHECK(out.findings.empty());
  REQUIRE(out.files.size() == 1);
  return out.files.front().bytes;
}

std::string card_of(const std::string& fiche, const std::string& path = "a.fiche.xml", std::string_view settings = {}) {
  return made_of(0, fiche, path, settings);
}

std::string page_of(const std::string& fiche, const std::string& path = "a.fiche.xml", std::string_view settings = {}) {
  return made_of(1, fiche, path, settings);
}

/// The recipe in schema.org terms that stands in a page.
std::string data_of(const std::string& page) {
  const std::string start = "<script type=\"application/ld+json\">\n";
  const std::size_t from = page.find(start) + start.size();
  return page.substr(from, page.find("</script>", from) - from);
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
    tests::check_kept("card/" + fs::path(fiche).filename().string() + ".md", card_of(project_file(path), path));
  }
}

TEST_CASE("a card of every fiche of the project is made, in both wordings") {
  int count = 0;
  for (const auto& [path, text] : tests::project_fiches()) {
    CAPTURE(path);
    for (const char* settings : {"", "wording=short"}) {
      const std::string card = card_of(text, path, settings);
      CHECK(card.starts_with("# "));
      CHECK(base::find_invalid_utf8(card) == std::string::npos);
      ++count;
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

TEST_CASE("a choice is a list of its own, so that nothing else is taken for one of it; lines under no heading come first") {
  const std::string list = "<choice when=\"in season\"><ingredient id=\"a\" name=\"plums\">1 kg</ingredient><ingredient id=\"b\" name=\"prunes\">400 g"
                           "</ingredient></choice><ingredient id=\"c\" name=\"nuts\" group=\"topping\">50 g</ingredient><ingredient id=\"d\" "
                           "name=\"sugar\">100 g</ingredient>";
  CHECK(below(card_of(cream(list))) ==
        "- One of these: in season:\n  - 1\u00A0kg plums\n  - 400\u00A0g prunes\n- 100\u00A0g sugar\n\n**topping:**\n\n- 50\u00A0g nuts\n");
}

TEST_CASE("amounts for a second batch follow the first") {
  const std::string fiche = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\" units=\"metric\"><title>Cream</title><yield portions=\"4\"/>"
                            "<yield id=\"many\" portions=\"40\"/><component id=\"c\" title=\"C\"><ingredient id=\"a\" name=\"milk\">1 kg<amount "
                            "batch=\"many\">10 kg</amount></ingredient><ingredient id=\"b\" name=\"bay\">2</ingredient></component></fiche>";
  const std::string card = card_of(fiche);
  CHECK(has(card, "**Makes:** 4 portions, or 40 portions\n"));
  CHECK(below(card) == "- 1\u00A0kg or 10\u00A0kg milk\n- 2 bay\n");
}

TEST_CASE("a card speaks the language of its fiche, and says that nothing is stated where nothing is") {
  const std::string fiche = cream("<ingredient id=\"a\" name=\"lait\" prep=\"froid\">2 l</ingredient><step on=\"fridge\" unattended=\"2 h\">Laisser prendre.</step>",
                                  "lang=\"fr\" units=\"metric\" state=\"draft\"");
  const std::string card = card_of(fiche);
  CHECK(has(card, "**Brouillon\u00A0: fiche en cours d’écriture.**"));
  CHECK(has(card, "**Allergènes\u00A0:** L’auteur n’en indique pas. Cela ne veut pas dire qu’il n’y en a pas."));
  CHECK(has(card, "1. Laisser prendre. (au réfrigérateur, 2\u00A0h)\n"));
}

TEST_CASE("pages of the demo kitchen read as they are kept, but for their looks") {
  for (const char* fiche : {"base/custard", "desserts/damson-almond-tart", "desserts/caramel-ice-cream"}) {
    const std::string path = "tests/kitchen/" + std::string(fiche) + ".fiche.xml";
    std::string page = page_of(project_file(path), path, "category=dessert|keywords=tart; autumn|published=2026-11-27");
    const std::size_t from = page.find("<style>");
    page.erase(from, page.find("</style>") - from);
    for (const char* block : {"<section", "<p", "<li", "<h2", "<tr", "<ol", "<div"})
      for (std::size_t at = page.find(block); at != std::string::npos; at = page.find(block, at + 2))
        if (page[at - 1] != '\n') page.insert(at, "\n");
    tests::check_kept("card/" + fs::path(fiche).filename().string() + ".html", page);
  }
}

TEST_CASE("nothing in a fiche ends the data or becomes markup of the page") {
  const std::string attack = "&lt;/script>&lt;script>alert(1)&lt;/script>&lt;!--&lt;b onload='x'>&quot;\\ \xE2\x80\xA8 &amp;lt;";
  const std::string fiche = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en&quot;>&lt;i\"><title>" + attack + "</title><summary>" + attack +
      "</summary><author>" + attack + "</author><yield portions=\"" + attack + "\" words=\"" + attack + "\"><mould name=\"" + attack +
      "\" length=\"" + attack + "\"/></yield><photo href=\"javascript:alert(1)\"/><photo href=\"a&quot;onerror=.png\" alt=\"" + attack +
      "\"/><component id=\"c\" title=\"" + attack + "\"><ingredient id=\"i\" name=\"" + attack + "\" prep=\"" + attack + "\">2</ingredient><step when=\"" +
      attack + "\">" + attack + "<gate>" + attack + "</gate></step><keep where=\"" + attack + "\">" + attack + "</keep></component></fiche>";
  const std::string page = page_of(fiche, "a.fiche.xml", "category=</script>|keywords=</script><b>");
  const std::size_t script = page.find("<script");
  CHECK(script == page.rfind("<script"));
  CHECK(page.find("</script") == page.rfind("</script"));
  const std::string data = data_of(page);
  CHECK(data.find_first_of("<>&") == std::string::npos);
  CHECK(has(data, "\"name\": \"\\u003c/script\\u003e\\u003cscript\\u003ealert(1)\\u003c/script\\u003e\\u003c!--\\u003cb onload='x'\\u003e\\\"\\\\ \\u2028 \\u0026lt;\""));
  CHECK_FALSE(has(page, "javascript:"));
  CHECK(has(page, "src=\"a&quot;onerror=.png\""));
  CHECK_FALSE(has(page, "<b onload"));
}

TEST_CASE("times are said only where every step states one, and none comes from another file") {
  const auto data = [](const std::string& inside) { return data_of(page_of(cream(inside))); };
  const std::string chain = data("<step do=\"mix\" on=\"bench\" makes=\"m\" hands=\"10 min\">Mix.</step><step do=\"bake\" on=\"oven\" makes=\"b\" hands=\"5 min\" "
                                 "unattended=\"1 h\">Bake the <use of=\"m\">mix</use>.</step>");
  CHECK(has(chain, "\"prepTime\": \"PT10M\",\n \"cookTime\": \"PT1H5M\",\n \"totalTime\": \"PT1H15M\""));
  CHECK_FALSE(has(data("<step hands=\"10 min\">Mix.</step><step>Bake.</step>"), "Time\""));
  CHECK_FALSE(has(data("<step hands=\"10 min\">Mix.</step><step unattended=\"overnight\">Chill.</step>"), "Time\""));
  CHECK_FALSE(has(data("<ingredient id=\"p\" name=\"pastry\" from=\"pastry.fiche.xml\">1 kg</ingredient><step hands=\"10 min\">Mix.</step>"), "Time\""));
}
