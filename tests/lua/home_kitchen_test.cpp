#include <catch2/catch.hpp>

#include <filesystem>
#include <string>
#include <utility>

#include "core/format/format.h"
#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

using namespace tamis;

namespace {

namespace fs = std::filesystem;

/// The fiche for a home; its findings where it is refused.
std::string at_home(const std::string& fiche, std::string_view settings = {}, const std::string& path = "a.fiche.xml") {
  const tests::Loaded loaded = tests::load_boxed("home-kitchen", settings);
  if (loaded.plugin == nullptr) return loaded.lines();
  tests::TallyLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  const lua::PluginConverted made =
      loaded.plugin->convert(loaded.plugin->manifest().additions.front(), *document, tests::demo_kitchen(), library);
  std::string said;
  for (const base::Finding& finding : made.findings) said += finding.message + "\n";
  return made.done && said.empty() ? format::write(made.document) : "refused\n" + said;
}

std::string component(const std::string& inside, const std::string& attributes = "lang=\"en\" units=\"metric\"") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" " + attributes + ">\n  <title>A</title>\n  <component id=\"c\" title=\"C\">\n    " + inside +
         "\n  </component>\n</fiche>\n";
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// White space folded, for words that the formatter wraps.
std::string folded(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (c != '\n' && c != ' ') out += c;
    else if (!out.empty() && out.back() != ' ') out += ' ';
  return out;
}

}  // namespace

TEST_CASE("every fiche of the project can be had for a home, and twice is the same as once") {
  const auto fiches = tests::project_fiches();
  for (const auto& [path, text] : fiches) {
    CAPTURE(path);
    const std::string once = at_home(text, "oven=static", path);
    REQUIRE(has(once, "<fiche"));
    CHECK((at_home(once, "oven=static", path) == once));
  }
  CHECK(fiches.size() > 20);
}

TEST_CASE("spoons stand beside grams where they hold the figure, and the grams stay") {
  const std::pair<const char*, const char*> rows[] = {
      {"<ingredient id=\"i\" food=\"water\">15 g</ingredient>", " also=\"1 tbsp\">15 g<"},
      {"<ingredient id=\"i\" food=\"water\">5 g</ingredient>", " also=\"1 tsp\">5 g<"},
      {"<ingredient id=\"i\" food=\"water\">37 g</ingredient>", " also=\"2 ½ tbsp\">37 g<"},
      {"<ingredient id=\"i\" food=\"water\">20 g</ingredient>", " also=\"1 tbsp 1 tsp\">20 g<"},
      {"<ingredient id=\"i\" food=\"water\">0.4 g</ingredient>", "food=\"water\">0.4 g<"},
      {"<ingredient id=\"i\" food=\"water\">100 g</ingredient>", "food=\"water\">100 g<"},
      {"<ingredient id=\"i\" food=\"water\">14–16 g</ingredient>", "food=\"water\">14–16 g<"},
      {"<ingredient id=\"i\" food=\"egg-yolk\" pieces=\"1\">18 g</ingredient>", "pieces=\"1\">18 g<"},
      {"<ingredient id=\"i\" food=\"rosemary-fresh\">4 g</ingredient>", "food=\"rosemary-fresh\">4 g<"},
  };
  for (const auto& [line, expected] : rows) {
    CAPTURE(line);
    CHECK(has(at_home(component(line)), expected));
  }
  CHECK(has(at_home(component(rows[0].first), "spoons=0"), "food=\"water\">15 g<"));
  CHECK(has(at_home(component(rows[0].first, "lang=\"en\" units=\"us\"")), "food=\"water\">15 g<"));
}

TEST_CASE("a fan oven's figure moves when asked, with the author's beside it") {
  const std::string fan = component("<step>Bake at <oven-temp mode=\"fan\">165 °C</oven-temp> for <time>40 min</time>.</step>");
  CHECK(has(at_home(fan), "<oven-temp mode=\"fan\">165 °C</oven-temp>"));
  CHECK(has(at_home(fan, "oven=static"), "<oven-temp mode=\"static\" was=\"165 °C\" was-mode=\"fan\">185 °C</oven-temp>"));
  const std::string range = component("<step>Bake at <oven-temp mode=\"fan\">325–350 °F</oven-temp>.</step>", "lang=\"en\" units=\"us\"");
  CHECK(has(at_home(range, "oven=static"), "was=\"325–350 °F\" was-mode=\"fan\">350–375 °F</oven-temp>"));
  const std::string deck = at_home(component("<step>Bake at <oven-temp mode=\"deck\">200 °C</oven-temp>.</step>"), "oven=static");
  CHECK(has(deck, "<oven-temp mode=\"deck\">200 °C</oven-temp>"));
  CHECK(has(folded(deck), "<note kind=\"home\">At home: heat an upturned tray or a stone"));
}

TEST_CASE("tins of a home are named with how much of the mould they take") {
  const auto note = [](const std::string& mould, const std::string& units = "metric") {
    const std::string made = folded(at_home("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\" units=\"" + units + "\">\n  <title>A</title>\n  <yield "
                                            "portions=\"4\">\n    <mould " + mould + "/>\n  </yield>\n</fiche>\n"));
    const std::size_t from = made.find("<note");
    return from == std::string::npos ? "" : made.substr(from, made.find("</note>") - from);
  };
  const std::string start = "<note kind=\"home\">At home, filled as high: ";
  CHECK(note("shape=\"frame\" length=\"36 cm\" width=\"26 cm\"") == start + "a tin of 33 × 23\u00A0cm takes 0.81 of this; a tin of 23 × 23\u00A0cm takes 0.57 of this.");
  CHECK(note("shape=\"ring\" diameter=\"26 cm\"") == start + "a tin of ⌀\u00A026\u00A0cm takes the same.");
  CHECK(note("shape=\"ring\" diameter=\"22 cm\"") == start + "a tin of ⌀\u00A023\u00A0cm takes 1.09 of this; a tin of ⌀\u00A024\u00A0cm takes 1.19 of this.");
  CHECK(note("shape=\"tray\" length=\"18 in\" width=\"13 in\"", "us") == start + "a tin of 13 × 9\u00A0in takes 0.5 of this; a tin of 9 × 9\u00A0in takes 0.35 of this.");
  CHECK(note("shape=\"ring\" count=\"24\" diameter=\"6 cm\"") == "");
  CHECK(note("shape=\"dome\" diameter=\"20 cm\"") == "");
}

TEST_CASE("what a home has not is said in the step, and nothing else in it is changed") {
  const auto step = [](const std::string& inside, const std::string& language = "en") {
    return folded(at_home(component(inside, "lang=\"" + language + "\" units=\"metric\"")));
  };
  CHECK(has(step("<step on=\"chiller\" unattended=\"20 min\">Cool it.</step>"),
            "<step on=\"chiller\" unattended=\"20 min\">Cool it. <note kind=\"home\">At home there is no blast chiller"));
  CHECK(has(step("<step do=\"churn\">Churn.</step>"), "At home without an ice-cream machine"));
  CHECK(has(step("<step>Check it with the refractometer.</step>"), "a drop on a cold saucer"));
  CHECK(has(step("<step>Cuire dans un sac sous vide.</step>", "fr"), "cela ne peut se faire tel quel"));
  CHECK_FALSE(has(step("<step on=\"chiller\">Kühlen.</step>", "de"), "<note"));
  CHECK_FALSE(has(step("<step on=\"fridge\">Chill it.</step>"), "<note"));
}
