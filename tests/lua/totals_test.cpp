#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>

#include "core/format/format.h"
#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

// The export "cost", and what it has in common with "label" (label_test.cpp): what people read is kept whole beside the tests, as text; the pages say the same.

using namespace tamis;
using tests::project_file;

namespace {

std::string made(const std::string& plugin, const std::string& addition, const std::string& fiche, const std::string& path,
                 std::string_view settings = {}, const fiche::Kitchen& kitchen = tests::demo_kitchen()) {
  const tests::Loaded loaded = tests::load_boxed(plugin, settings);
  REQUIRE(loaded.lines() == "");
  tests::TallyLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  for (const lua::Addition& one : loaded.plugin->manifest().additions) {
    if (one.id != addition) continue;
    const lua::Exported out = loaded.plugin->export_fiche(one, document, kitchen, library);
    for (const base::Finding& finding : out.findings) UNSCOPED_INFO(finding.message);
    REQUIRE(out.findings.empty());
    REQUIRE(out.files.size() == 1);
    return out.files.front().bytes;
  }
  FAIL("no such export");
  return {};
}

std::string of_demo(const std::string& plugin, const std::string& addition, const std::string& fiche, std::string_view settings = {}) {
  const std::string path = "tests/kitchen/" + fiche + ".fiche.xml";
  return made(plugin, addition, project_file(path), path, settings);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// What a strict XML reader says of a page; "" is good.
std::string faults_of(const std::string& html) {
  const std::string inside = html.substr(html.find('\n') + 1);
  const format::Read read = format::read(std::make_shared<base::Source>(
      "page.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"><title>A</title>" + inside + "</fiche>"));
  std::string out;
  for (const base::Finding& finding : read.findings) out += finding.message + "\n";
  return read.document == nullptr && out.empty() ? "unreadable" : out;
}

std::string bare(const std::string& title, const std::string& inside) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\" units=\"metric\"><title>" + title + "</title>" + inside + "</fiche>";
}

}  // namespace

TEST_CASE("costs of the demo kitchen read as they are kept") {
  tests::check_kept("totals/damson-almond-tart.cost.txt", of_demo("cost", "cost-text", "desserts/damson-almond-tart"));
  tests::check_kept("totals/damson-almond-tart.2026-08-01.cost.txt", of_demo("cost", "cost-text", "desserts/damson-almond-tart", "day=2026-08-01"));
  tests::check_kept("totals/braised-ox-cheek.cost.txt", of_demo("cost", "cost-text", "mains/braised-ox-cheek"));
}

TEST_CASE("the pages of every demo fiche are well formed and need nothing else") {
  const char* path = GENERATE("base/custard", "base/sweet-pastry", "base/brown-chicken-stock", "bakes/laminated-rolls",
                              "desserts/buckwheat-pear-frame", "desserts/damson-almond-tart", "desserts/quince-hazelnut-bay",
                              "mains/braised-ox-cheek", "mains/roast-leg-of-lamb", "preserves/damson-jam",
                              "soups/celeriac-apple-soup");
  CAPTURE(path);
  for (const char* plugin : {"label", "cost", "control-points"}) {
    const std::string html = of_demo(plugin, plugin, path, plugin == std::string_view("label") ? "trial=yes" : "");
    CAPTURE(plugin);
    CHECK(faults_of(html) == "");
    CHECK(has(html, "default-src 'none'"));
    for (const char* outside : {"http:", "https:", "<script", "<link", "<img", "url("}) CHECK(!has(html, outside));
  }
}

TEST_CASE("a dish of which little is known gets a page that says so, and no figure") {
  const std::string fiche = bare("Tins &amp; \"jars\" &lt;b&gt;", R"(<component id="c" title="C"><ingredient id="a" name="paste &lt;i&gt;">2 cups</ingredient>
<step>Open the <use of="a">paste</use>.</step></component>)");
  const fiche::Kitchen nothing;
  const std::string label = made("label", "label", fiche, "a.fiche.xml", "trial=yes", nothing);
  CHECK(faults_of(label) == "");
  CHECK(has(label, "Tins &amp; &quot;jars&quot; &lt;b&gt;"));
  CHECK(has(label, "Not ready to print"));
  CHECK(has(label, "No mass for paste &lt;i&gt;."));
  CHECK(has(label, "Nothing is known of, so allergens may be missing: paste &lt;i&gt;."));
  CHECK(!has(label, "per 100 g</th>"));
  const std::string cost = made("cost", "cost-text", fiche, "a.fiche.xml", {}, nothing);
  CHECK(has(cost, "no price"));
  CHECK(has(cost, "What is not in it"));
  CHECK(has(cost, "One step does not say how long it takes a person."));
  CHECK(!has(cost, "0.00"));
  const std::string empty = made("label", "label-text", bare("Nothing", ""), "a.fiche.xml", "trial=yes", nothing);
  CHECK(has(empty, "Not ready to print"));
}

TEST_CASE("labels and costs speak French where the fiche does") {
  const std::string fiche = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"fr\" units=\"metric\"><title>Sablés</title><yield portions=\"10\"/>"
                            "<component id=\"c\" title=\"Pâte\"><ingredient id=\"a\" food=\"butter-unsalted\" name=\"beurre\">100 g</ingredient>"
                            "<ingredient id=\"b\" food=\"flour-wheat-white\" name=\"farine\">200 g</ingredient>"
                            "<step hands=\"10 min\">Sabler le <use of=\"a\">beurre</use> et la <use of=\"b\">farine</use>.</step></component></fiche>";
  const std::string label = made("label", "label-text", fiche, "a.fiche.xml", "trial=yes", fiche::Kitchen{});
  CHECK(has(label, "Ingrédients\u00a0: farine de BLÉ, beurre doux (LAIT)."));
  CHECK(has(label, "7,2\u00a0g"));
  const std::string cost = made("cost", "cost-text", fiche, "a.fiche.xml");
  CHECK(has(cost, "0,83\u00a0EUR"));
}
