#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "core/format/format.h"
#include "tests/lua/hosting.h"
#include "tests/shared_files.h"

using namespace tamis;
using tests::project_file;

namespace {

namespace fs = std::filesystem;
const std::string folder = "plugins/sheet/";

/// The plugin as it lies in the box.
tests::Loaded load_sheet(std::string_view settings) { return tests::load_boxed("sheet", settings); }

/// The project's own files, by their path from the root.
class ProjectLibrary final : public fiche::Library {
 public:
  base::Result<std::shared_ptr<const fiche::Document>> open(std::string_view from, std::string_view reference) override {
    const std::string path = (fs::path(from).parent_path() / reference).lexically_normal().string();
    auto& document = read_[path];
    if (const std::string text = project_file(path); document == nullptr && !text.empty())
      document = tests::document_of(text, path);
    if (document != nullptr) return document;
    base::Finding fault;
    fault.rule = "dangling-reference";
    fault.message = "there is no " + path;
    return fault;
  }

 private:
  std::map<std::string, std::shared_ptr<const fiche::Document>> read_;
};

struct Sheet {
  std::string html;
  std::string said;  ///< messages, a line each
};

Sheet sheet_of(const std::string& fiche, std::string_view settings = {}, const std::string& path = "a.fiche.xml",
               const fiche::Kitchen& kitchen = {}) {
  const tests::Loaded loaded = load_sheet(settings);
  REQUIRE(loaded.lines() == "");
  ProjectLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  const lua::Exported made =
      loaded.plugin->export_fiche(loaded.plugin->manifest().additions.front(), document, kitchen, library);
  Sheet sheet;
  for (const base::Finding& finding : made.findings) sheet.said += finding.message + "\n";
  if (made.files.size() == 1) sheet.html = made.files.front().bytes;
  return sheet;
}

/// Without its looks, which would make every file kept beside the test as long as the style sheet.
std::string without_style(std::string html) {
  const std::size_t from = html.find("<style>");
  const std::size_t to = html.find("</style>");
  REQUIRE(to != std::string::npos);
  return html.replace(from, to - from, "<style>");
}

/// What a strict XML reader says of a page: tags that don't close, attributes twice, stray signs. "" is good.
std::string faults_of(const std::string& html) {
  const std::string inside = html.substr(html.find('\n') + 1);
  const format::Read read = format::read(std::make_shared<base::Source>(
      "sheet.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"><title>A</title>" + inside + "</fiche>"));
  std::string out;
  for (const base::Finding& finding : read.findings) out += finding.message + "\n";
  return read.document == nullptr && out.empty() ? "unreadable" : out;
}

/// The words alone, white space folded.
std::string words_of(const std::string& html) {
  const std::string bare = std::regex_replace(without_style(html), std::regex("<[^>]*>"), " ");
  std::string folded = std::regex_replace(bare, std::regex("(\\s|\u00A0)+"), " ");
  for (const auto& [from, to] : {std::pair{"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&#39;", "'"}, {"&amp;", "&"}})
    for (std::size_t at = folded.find(from); at != std::string::npos; at = folded.find(from, at + 1))
      folded.replace(at, std::string_view(from).size(), to);
  return std::regex_replace(folded, std::regex(" ([,.;:)])|([(]) "), "$1$2");
}

std::string titled(const std::string& content, const std::string& attributes = "lang=\"en\" units=\"metric\"") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" xmlns:house=\"urn:h\" id=\"a\" " + attributes + "><title>Set cream</title>" +
         content + "</fiche>";
}

std::string component(const std::string& content) {
  return titled("<component id=\"c\" title=\"Cream\">" + content + "</component>");
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

// Without the style, and with a line for each block. TAMIS_WRITE_GOLDEN=1 writes the file anew; read the difference before it is committed.
TEST_CASE("the sheet of a draft with a pastry from another file is the one kept beside the test") {
  const std::string path = "tests/lua/sheet/apple-tart.fiche.xml";
  const Sheet made = sheet_of(project_file(path), "", path);
  CHECK(made.said == "");
  const std::regex block("(.)(<(section|div|header|footer|nav|p|dl|ol|ul|li|tr|h[1-3]|table|details)[ >])");
  tests::check_kept("sheet/apple-tart.html", std::regex_replace(without_style(made.html), block, "$1\n$2"));
}

TEST_CASE("every fiche makes a sheet that reads as XML, in every wording, in both systems") {
  const auto fiches = tests::project_fiches({"tests/kitchen", "tests/against/real", "tests/drafts", "tests/lua/sheet", "schemas"});
  REQUIRE(fiches.size() > 30);
  for (const char* settings : {"wording=full", "wording=short|systems=both", "wording=learner|systems=us"}) {
    for (const auto& [path, text] : fiches) {
      CAPTURE(path, settings);
      const Sheet made = sheet_of(text, settings, path);
      CHECK(made.said == "");
      REQUIRE(made.html.starts_with("<!DOCTYPE html>\n"));
      CHECK(faults_of(made.html) == "");
      CHECK(base::find_invalid_utf8(made.html) == std::string::npos);
    }
  }
}

TEST_CASE("nothing in a fiche becomes markup, style or a link of the sheet") {
  const std::string attack = R"(&lt;/style>&lt;script>alert("1")&lt;/script>&lt;b onload='x'>&amp;amp; {} \0a */ @import)";
  std::string quoted;
  for (const char c : attack) quoted += c == '"' ? std::string("&quot;") : std::string(1, c);
  const std::string text = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" revision=\"" + quoted + "\" state=\"" + quoted +
      "\" lang=\"en&quot;>&lt;i\" scaled-by=\"" + quoted + "\"><title>" + attack + "</title><summary>" + attack +
      "</summary><yield portions=\"" + quoted + "\" words=\"" + quoted + "\"><mould name=\"" + quoted + "\" shape=\"" +
      quoted + "\" length=\"" + quoted + "\"/><loss what=\"" + quoted + "\" amount=\"" + quoted + "\">" + attack +
      "</loss></yield><equipment id=\"e\">" + attack + "</equipment><allergens contains=\"" + quoted + "\">" + attack +
      "</allergens><caution>" + attack + "</caution><component id=\"c\" title=\"" + quoted + "\" day=\"" + quoted +
      "\" from=\"" + quoted + "\"><ingredient id=\"i\" name=\"" + quoted + "\" prep=\"" + quoted + "\" size=\"" + quoted +
      "\" per=\"" + quoted + "\" purpose=\"" + quoted + "\" purchase=\"" + quoted + "\">" + attack +
      "<note>" + attack + "</note></ingredient><step on=\"" + quoted + "\" who=\"" + quoted + "\" hands=\"" + quoted +
      "\" when=\"" + quoted + "\" after=\"" + quoted + "\" at-most=\"" + quoted + "\">" + attack + "<use of=\"i\" at=\"" +
      quoted + "\">" + attack + "</use><oven-temp mode=\"" + quoted + "\">" + attack + "</oven-temp><gate>" + attack +
      "</gate><control hazard=\"" + quoted + "\" check=\"" + quoted + "\">" + attack + "</control><photo href=\"" + quoted +
      "\" alt=\"" + quoted + "\"/></step><keep where=\"" + quoted + "\" for=\"" + quoted + "\">" + attack +
      "</keep></component><trial date=\"" + quoted + "\" verdict=\"" + quoted + "\"/></fiche>";
  for (const char* settings : {"", "systems=both|wording=learner"}) {
    const Sheet made = sheet_of(text, settings);
    REQUIRE(made.said == "");
    const std::string& html = made.html;
    CHECK_FALSE(has(html, "<script"));
    CHECK_FALSE(has(html, "onload='"));
    CHECK(html.find("</style>") == html.rfind("</style>"));
    CHECK_FALSE(has(html, "href=\"j"));
    const std::regex links("(href|src|url)[=(]\"?[^#\"]");
    CHECK_FALSE(std::regex_search(html, links));
    // In the style, a title is a string of letters, digits, spaces and code points.
    const std::string page = html.substr(html.find("@page{"), html.find("</style>") - html.find("@page{"));
    CHECK(std::regex_match(page, std::regex(R"re((@page(:first)?\{|@[a-z-]+\{content:((none|"([A-Za-z0-9 ]|\\[0-9a-f]{6} )*"|counter\(pages?\)|"/") ?)+\}|\})*)re")));
    CHECK(faults_of(html) == "");
  }
}

TEST_CASE("a photograph stands in the sheet only when the fiche holds it") {
  const auto shown = [](const std::string& href) {
    return sheet_of(component("<step>Cook.<photo href=\"" + href + "\" alt=\"dark\"/></step>")).html;
  };
  CHECK(has(shown("data:image/png;base64,iVBORw0KGgo="), "<img src=\"data:image/png;base64,iVBORw0KGgo=\" alt=\"dark\"/>"));
  for (const char* href : {"dark.jpg", "https://example.org/dark.jpg", "javascript:alert(1)", "data:text/html;base64,PGI+",
                           "data:image/svg+xml;base64,PHN2Zy8+"}) {
    CAPTURE(href);
    const std::string html = shown(href);
    CHECK_FALSE(has(html, "<img"));
    CHECK(has(words_of(html), std::string("Photograph, kept apart: dark ") + href));
  }
}

TEST_CASE("short and learner's wording stand in for the sentence; gates and control points stay") {
  const std::string text = component(
      "<step>Boil the milk.<short>Boil.</short><learner>Put the pan on.</learner><why>It sets.</why><done>It climbs.</done>"
      "<rescue when=\"it burns\">Start again.</rescue><gate>It boils.</gate><control hazard=\"growth\">Hot.</control></step>");
  struct Row {
    const char* settings;
    std::vector<const char*> there, gone;
  };
  const Row rows[] = {
      {"wording=full", {"Boil the milk.", "It climbs.", "If it burns: Start again."}, {"Put the pan on.", "It sets."}},
      {"wording=short", {"Boil."}, {"Boil the milk.", "Put the pan on.", "It sets.", "It climbs.", "Start again."}},
      {"wording=learner", {"Put the pan on.", "Why: It sets.", "It climbs.", "Start again."}, {"Boil the milk.", "Boil."}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.settings);
    const std::string words = words_of(sheet_of(text, row.settings).html);
    CHECK(has(words, "Before going on It boils."));
    CHECK(has(words, "Control point: growth Hot."));
    for (const char* there : row.there) CHECK(has(words, there));
    for (const char* gone : row.gone) CHECK_FALSE(has(words, gone));
  }
}

TEST_CASE("amounts stand in the sentence, for what is taken") {
  const std::string list = "<ingredient id=\"milk\" name=\"milk\">300 g</ingredient>"
                           "<ingredient id=\"oil\" name=\"oil\">1 1/2 tbsp</ingredient>"
                           "<ingredient id=\"salt\" name=\"salt\">to taste</ingredient>";
  const auto sentence = [&](const std::string& step) {
    const std::string html = sheet_of(component(list + "<step>" + step + "</step>")).html;
    const std::size_t from = html.find("<ol class=\"steps\">");
    return words_of("<style></style>" + html.substr(from, html.find("</ol>", from) - from));
  };
  const std::pair<const char*, const char*> rows[] = {
      {"Boil the <use of=\"milk\">milk</use>.", " 1 Boil the milk (300 g). "},
      {"Heat <use of=\"oil\">oil</use>.", " 1 Heat oil (1 ½ tbsp). "},
      {"Boil <use of=\"milk\" take=\"1/3\">a third of the milk</use>.", " 1 Boil a third of the milk (100 g). "},
      {"Boil <use of=\"milk\" take=\"50 g\">milk</use>.", " 1 Boil milk (50 g). "},
      {"Boil <use of=\"milk\"><amount>300 g</amount> milk</use>.", " 1 Boil 300 g milk. "},
      {"Mix <use of=\"milk oil\">all</use>.", " 1 Mix all (milk 300 g, oil 1 ½ tbsp). "},
      {"Pour in the <use of=\"milk\" at=\"at most 38 °C\">milk</use>.", " 1 Pour in the milk (300 g, at most 38 °C). "},
  };
  for (const auto& [step, expected] : rows) {
    CAPTURE(step);
    CHECK(sentence(step) == expected);
  }
}

TEST_CASE("what only an attribute says is printed, what the sentence says too is not said twice") {
  const std::pair<const char*, const char*> rows[] = {
      {"Bake at <oven-temp mode=\"fan\">180 °C</oven-temp>.", "Bake at 180 °C (fan)."},
      {"Bake in a fan oven at <oven-temp mode=\"fan\">180 °C</oven-temp>.", "Bake in a fan oven at 180 °C."},
      {"Bake at <oven-temp mode=\"deck\" top=\"190 °C\" bottom=\"210 °C\">200 °C</oven-temp>.",
       "Bake at 200 °C (deck oven, top 190 °C, bottom 210 °C)."},
      {"Cook to <food-temp place=\"core\">75 °C</food-temp>.", "Cook to 75 °C (in the centre)."},
      {"Cook to a core of <food-temp place=\"core\">75 °C</food-temp>.", "Cook to a core of 75 °C."},
      {"Hold at <food-temp for=\"15 s\">72 °C</food-temp>.", "Hold at 72 °C (for 15 s)."},
      {"Grease it. <gap>with what</gap>", "Grease it. [not said: with what]"},
      {"Stir<house:mark>secret</house:mark> well.", "Stir well."},
  };
  for (const auto& [step, expected] : rows) {
    CAPTURE(step);
    std::string words = words_of(sheet_of(component("<step>" + std::string(step) + "</step>")).html);
    if (has(expected, "[")) {
      CHECK(has(words, "Grease it. not said: with what"));
      continue;
    }
    CHECK(has(words, expected));
    CHECK_FALSE(has(words, "secret"));
  }
}

TEST_CASE("a gate on what comes in stands before the step, one on what it makes behind it") {
  const auto words = [](const std::string& gate) {
    return words_of(sheet_of(component("<step makes=\"custard\">Cook.</step><step makes=\"mousse\">Fold." + gate +
                                       "</step><step>Chill.</step>")).html);
  };
  CHECK(has(words("<gate of=\"custard\">It is cool.</gate>"), "1 Cook. Before going on It is cool. 2 Fold. 3 Chill."));
  CHECK(has(words("<gate of=\"mousse\">It holds.</gate>"), "1 Cook. 2 Fold. Before going on It holds. 3 Chill."));
  CHECK(has(words("<gate>It holds.</gate>"), "1 Cook. 2 Fold. Before going on It holds. 3 Chill."));
}

TEST_CASE("two systems stand side by side, the author's first; one system takes the place of the other") {
  const std::string text = component("<ingredient id=\"milk\" food=\"milk-whole\" name=\"milk\">500 g</ingredient>"
                                     "<step>Warm the <use of=\"milk\">milk</use> to <food-temp>40 °C</food-temp>.</step>");
  CHECK(has(words_of(sheet_of(text).html), "Warm the milk (500 g) to 40 °C."));
  const std::string us = words_of(sheet_of(text, "systems=us").html);
  CHECK(has(us, "Warm the milk (1 lb 1 ¾ oz) to 104 °F."));
  CHECK(has(us, "Figures converted and rounded to what can be measured."));
  const std::string both = words_of(sheet_of(text, "systems=both").html);
  CHECK(has(both, "Warm the milk (500 g / 1 lb 1 ¾ oz) to 40 °C / 104 °F."));
  CHECK(has(both, "500 g 1 lb 1 ¾ oz milk"));
  CHECK(sheet_of(text, "systems=metric").html == sheet_of(text).html);
}

TEST_CASE("what another line or the rest comes to is worked out from the author's figures") {
  const std::string text = component(
      "<ingredient id=\"leaf\" food=\"gelatine-leaf\" name=\"leaf\">14 g</ingredient>"
      "<ingredient id=\"soak\" food=\"water\" name=\"ice water\" as-much-as=\"leaf\" by=\"mass\" times=\"5\"/>"
      "<step>Soak the <use of=\"leaf\">leaf</use> in <use of=\"soak\" take=\"20 g\">some water</use>.</step>"
      "<step>Add <use of=\"soak\" take=\"the rest\">the rest of the water</use>.</step>");
  const std::string author = words_of(sheet_of(text).html);
  CHECK(has(author, "70 g ice water, 5 × the weight of the leaf"));
  CHECK(has(author, "in some water (20 g)."));
  CHECK(has(author, "Add the rest of the water (50 g)."));
  const std::string both = words_of(sheet_of(text, "systems=both").html);
  CHECK(has(both, "70 g "));
  CHECK(has(both, "Add the rest of the water (50 g / 1 ¾ oz)."));
}

TEST_CASE("a fiche that does not say whose cups it means is shown as written, with the reason") {
  const std::string text = titled("<component id=\"c\" title=\"C\"><ingredient name=\"milk\">1 cup</ingredient></component>",
                                 "lang=\"en\"");
  const std::string words = words_of(sheet_of(text, "systems=metric").html);
  CHECK(has(words, "1 cup milk"));
  CHECK(has(words, "Shown as written: "));
}

TEST_CASE("two batches have two columns, and both amounts in the sentence") {
  const std::string text = titled(
      "<yield id=\"small\" portions=\"10\"/><yield id=\"large\" portions=\"20\"/><component id=\"c\" title=\"C\">"
      "<ingredient id=\"milk\" name=\"milk\">1 l<amount batch=\"large\">2 l</amount></ingredient>"
      "<step>Boil the <use of=\"milk\">milk</use> for <time batch=\"large\">20 min</time>.</step></component>");
  const std::string words = words_of(sheet_of(text).html);
  CHECK(has(words, "10 portions 20 portions Ingredient 1 l 2 l milk"));
  CHECK(has(words, "Boil the milk (1 l | 2 l) for 20 min (for 20 portions)."));
}

TEST_CASE("what must be known first stands at the top") {
  const auto words = [](const std::string& attributes, const std::string& content) {
    return words_of(sheet_of(titled(content, "lang=\"en\" " + attributes)).html);
  };
  CHECK(has(words("state=\"draft\"", ""), "Draft: still being written"));
  CHECK(has(words("state=\"tested\"", ""), "No trial on record"));
  CHECK_FALSE(has(words("state=\"tested\"", "<trial date=\"2026-05-20\" verdict=\"passed\"/>"), "No trial on record"));
  CHECK(has(words("", "<trial date=\"2026-05-20\" verdict=\"failed\"/>"), "The last trial failed (2026-05-20)."));
  CHECK(has(words("scaled-by=\"35/3\"", ""), "Scaled: 11 ⅔ times the author’s batch."));
  CHECK(has(words("scaled-by=\"1/0\"", ""), "Scaled: "));
}

TEST_CASE("allergens are the author's statement, those of other files apart; silence is not absence") {
  const std::string silent = words_of(sheet_of(titled("")).html);
  CHECK(has(silent, "The author states no allergens. That does not mean there are none."));
  const std::string stated = words_of(sheet_of(titled(
      "<allergens contains=\"egg milk\" may-contain=\"nuts\">Egg, milk.</allergens>")).html);
  CHECK(has(stated, "Contains eggs, milk May contain nuts Egg, milk. The author’s statement"));
  const std::string linked = words_of(sheet_of(
      titled("<component id=\"c\" title=\"Case\" from=\"../../kitchen/base/sweet-pastry.fiche.xml#pastry\" take=\"500 g\"/>"), "",
      "tests/lua/sheet/x.fiche.xml").html);
  CHECK(has(linked, "In Sweet pastry Contains cereals containing gluten, eggs, milk"));
  CHECK(has(linked, "500 g Sweet pastry, on its own sheet, Revision 3, Released"));
  const std::string lost = words_of(sheet_of(
      titled("<component id=\"c\" title=\"Case\" from=\"gone.fiche.xml\"/>"), "", "tests/lua/sheet/x.fiche.xml").html);
  CHECK(has(lost, "Case, sheet: gone.fiche.xml its sheet could not be opened: there is no tests/lua/sheet/gone.fiche.xml"));
}

TEST_CASE("labels are in the language of the fiche; another language gets English, marked so") {
  const auto html = [](const std::string& language) {
    return sheet_of(titled("<allergens contains=\"milk\"/>", "lang=\"" + language + "\"")).html;
  };
  CHECK(has(words_of(html("fr-CA")), "Contient lait"));
  CHECK(has(words_of(html("de")), "Enthält Milch"));
  CHECK(has(words_of(html("es")), "Contiene leche"));
  CHECK(has(html("fr-CA"), "<html lang=\"fr-CA\">"));
  CHECK(has(html("it"), "<html lang=\"it\">"));
  CHECK(has(html("it"), "<span lang=\"en\">Contains</span>"));
}

TEST_CASE("all languages have the same words, with the same places to fill, and none promises what a sheet cannot know") {
  const std::string text = project_file(folder + "words.lua");
  std::map<std::string, std::map<std::string, std::set<std::string>>> languages;
  const std::regex word("(?:\\[\")?([a-z_-]+)(?:\"\\])? = \"([^\"]*)\"");
  const std::regex hole("\\{[a-z]+\\}");
  for (const char* language : {"en", "fr", "de", "es"}) {
    const std::size_t from = text.find(std::string("\n  ") + language + " = {\n");
    const std::string table = text.substr(from, text.find("\n  },", from) - from);
    for (std::sregex_iterator at(table.begin(), table.end(), word), end; at != end; ++at) {
      const std::string says = (*at)[2];
      auto& holes = languages[language][(*at)[1]];
      for (std::sregex_iterator in(says.begin(), says.end(), hole); in != end; ++in) holes.insert(in->str());
    }
  }
  CHECK(languages["en"].size() > 150);
  for (const auto& [language, table] : languages) {
    CAPTURE(language);
    CHECK((table == languages["en"]));
  }
  const std::regex promises("\\bsafe\\b|free from|free of|allergen-free|sans danger|sans allerg|frei von|allergenfrei|libre de|sin al[eé]rgenos");
  CHECK_FALSE(std::regex_search(text, promises));
}
