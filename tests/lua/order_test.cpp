#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

// The export "order", over many fiches. Figures are worked out by hand in the comments.

using namespace tamis;
using tests::project_file;

namespace {

struct Named {
  std::string path, text;
};

struct Ordered {
  std::string bytes;     ///< of the one file; "" when there is none
  std::string name;      ///< of the file
  std::string findings;  ///< "path: message [advice]", a line each
};

Ordered ordered(const std::string& addition, const std::vector<Named>& fiches, const fiche::Kitchen& kitchen,
                std::string_view settings = {}, tests::TallyLibrary library = {}) {
  const tests::Loaded loaded = tests::load_boxed("order", settings);
  REQUIRE(loaded.lines() == "");
  std::vector<std::shared_ptr<const fiche::Document>> documents;
  for (const Named& one : fiches) {
    documents.push_back(tests::document_of(one.text, one.path));
    REQUIRE(documents.back() != nullptr);
  }
  Ordered out;
  for (const lua::Addition& one : loaded.plugin->manifest().additions) {
    if (one.id != addition) continue;
    const lua::ExportedAll made = loaded.plugin->export_all(one, documents, kitchen, library);
    REQUIRE(made.findings.size() == documents.size());
    for (std::size_t i = 0; i < documents.size(); ++i)
      for (const base::Finding& finding : made.findings[i])
        out.findings += documents[i]->source().path() + ": " + finding.message + " [" + finding.advice + "]\n";
    if (made.files.empty()) return out;
    REQUIRE(made.files.size() == 1);
    out.bytes = made.files.front().bytes;
    out.name = made.files.front().name;
  }
  return out;
}

Named dish(const std::string& id, const std::string& title, const std::string& inside) {
  return {id + ".fiche.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"" + id + "\" lang=\"en\" units=\"metric\"><title>" + title +
                                 "</title><yield portions=\"10\"/><component id=\"" + id + "-c\" title=\"C\">" + inside + "</component></fiche>"};
}

const fiche::Kitchen& small_kitchen() {
  static const fiche::Kitchen kitchen = tests::kitchen_with(
      R"(<food id="egg-whole" name="eggs" like="egg-whole" supplier="the farm" price="8.40 EUR" pack="30" piece="50 g"/>
<food id="butter-unsalted" name="butter" like="butter-unsalted" supplier="the dairy" price="3.10 EUR" pack="250 g" stock="300 g"/>
<food id="carrot" name="carrots" like="carrot" supplier="the market" price="6 EUR" pack="5 kg" trim="20 %"/>)");
  return kitchen;
}

const Named& custard() {
  static const Named one = dish("custard", "Custard",
                                R"(<ingredient id="y" food="egg-yolk">102 g</ingredient><ingredient id="b" food="butter-unsalted">400 g</ingredient>
<ingredient id="k" food="carrot">800 g</ingredient><step>Mix <use of="y">yolks</use>, <use of="b">butter</use> and <use of="k">carrots</use>.</step>)");
  return one;
}

const Named& meringue() {
  static const Named one = dish("meringue", "Meringue",
                                R"(<ingredient id="w" food="egg-white">132 g</ingredient><ingredient id="j" food="lemon-juice">96 g</ingredient>
<ingredient id="z" food="lemon-zest">6 g</ingredient><ingredient id="h" name="cress">2 boxes</ingredient>
<step>Whisk <use of="w">whites</use>, <use of="j">juice</use>, <use of="z">zest</use>, <use of="h">cress</use>.</step>)");
  return one;
}

/// The line of a food.
std::string line_of(const std::string& csv, const std::string& food) {
  for (std::size_t at = 0; at < csv.size();) {
    const std::size_t end = csv.find("\r\n", at);
    const std::string line = csv.substr(at, end - at);
    if (line.find("," + food + ",") != std::string::npos) return line;
    at = end + 2;
  }
  return {};
}

std::vector<Named> demo_menu() {
  std::vector<Named> out;
  for (const char* path : {"desserts/damson-almond-tart", "desserts/quince-hazelnut-bay", "desserts/pineapple-milk-glass",
                           "mains/braised-ox-cheek", "mains/duck-breast-chips", "soups/celeriac-apple-soup", "base/sweet-pastry",
                           "base/brown-chicken-stock"}) {
    const std::string file = "tests/kitchen/" + std::string(path) + ".fiche.xml";
    out.push_back({file, project_file(file)});
  }
  return out;
}

}  // namespace

// Butter: 400 g needed, 300 g in stock, 100 g to buy: one pack of 250 g; 300 + 250 - 400 = 150 g left.
// Eggs: 102 g of yolk are 6 of 17 g, 132 g of white 4 of 33 g: 6 eggs of a tray of 30, 24 left; of the 6, 2 whites (66 g).
// Carrots: 0.8 kg / (1 - 20 %) = 1 kg of a sack of 5 kg, 4 kg left.
// Lemons, which the kitchen does not list: 96 g of juice are 2 of 48 g, 6 g of zest 1 of 6 g: 2 lemons, the zest of one left.
// Cress: nobody knows what a box weighs, so it stays 2 boxes.
TEST_CASE("an order takes off trim and stock, makes packs and counts yolk and white of one egg once") {
  const Ordered out = ordered("order", {custard(), meringue()}, small_kitchen());
  CHECK(out.findings == "");
  CHECK(out.name == "order.csv");
  CHECK(out.bytes ==
        "Supplier,Food,Needed,Trim %,As bought,In stock,To buy,Unit,Pack,Packs,Left over,Parts left,Price of a pack,Sum,Currency,For,Note\r\n"
        "the dairy,butter,400,,400,300,100,g,250 g,1,150,,3.10,3.10,EUR,Custard,\r\n"
        "the farm,eggs,6,,6,,6,pc,30,1,24,2 × egg white (66 g),8.40,8.40,EUR,Custard (egg yolk) 102 g; Meringue (egg white) 132 g,\r\n"
        "the market,carrots,0.8,20,1,,1,kg,5 kg,1,4,,6.00,6.00,EUR,Custard,\r\n"
        ",cress,,,,,,,,,,,,,,Meringue,also 2 boxes (Meringue)\r\n"
        ",lemons,2,,2,,2,pc,,,,1 × lemon zest (6 g),,,,Meringue (lemon juice) 96 g; Meringue (lemon zest) 6 g,not in the kitchen file\r\n");
}

// 30 portions are 3 batches of 10: 1200 g of butter less 100 g in stock by the setting are 1100 g, 5 packs, 150 g left.
// Of meringue 2 batches: 8 whites against 18 yolks, 10 whites left. 2 boxes times 2.
TEST_CASE("how much of each dish is made is said with make") {
  const Ordered out = ordered("order", {custard(), meringue()}, small_kitchen(), "make=custard=30 meringue=2x|stock=butter-unsalted=100g");
  CHECK(out.findings == "");
  CHECK(line_of(out.bytes, "butter") == "the dairy,butter,1200,,1200,100,1100,g,250 g,5,150,,3.10,15.50,EUR,Custard,");
  CHECK(line_of(out.bytes, "eggs").starts_with("the farm,eggs,18,,18,,18,pc,30,1,12,10 × egg white (330 g),"));
  CHECK(line_of(out.bytes, "cress").ends_with("also 4 boxes (Meringue)"));
  const Ordered by_mass = ordered("order", {custard()}, small_kitchen(), "make=custard=651g");  // half of 1302 g
  CHECK(line_of(by_mass.bytes, "butter") == "the dairy,butter,200,,200,300,0,g,250 g,0,100,,3.10,0.00,EUR,Custard,");
  CHECK(line_of(ordered("order", {custard(), meringue()}, small_kitchen(), "make=custard=0").bytes, "butter") == "");
}

TEST_CASE("an order that cannot be followed is not made, and says why") {
  CHECK(ordered("order", {custard()}, small_kitchen(), "make=custrad=3").findings ==
        "custard.fiche.xml: make names custrad, and no fiche of that id is among those to order for [did you mean custard?]\n");
  CHECK(ordered("order", {custard()}, small_kitchen(), "make=custrad=3").bytes == "");
  CHECK(ordered("order", {custard()}, small_kitchen(), "make=custard").findings.starts_with("custard.fiche.xml: make says \"custard\""));
  CHECK(ordered("order", {meringue()}, small_kitchen(), "make=meringue=3kg").findings.find("not known what a batch weighs") != std::string::npos);
  CHECK(ordered("order", {meringue()}, small_kitchen(), "make=meringue=many").findings.find("no number of portions") != std::string::npos);
}

// The base cracks 10 eggs of 50 g for their yolks, 170 g of 10 × 17 g, and weighs 500 g with 330 g of sugar; the dish takes 250 g
// of it, half a batch: 5 eggs, whose 5 whites are left. Named beside the dish the base is not counted again, unless make says so.
TEST_CASE("what a dish takes from another fiche is bought once, whole eggs where only yolks go in") {
  const Named base = {"base.fiche.xml", R"(<fiche xmlns="urn:tamis:fiche:1" id="base" lang="en" units="metric"><title>Base</title>
<component id="c" title="Sabayon"><ingredient id="e" food="egg-whole">500 g<part id="y" food="egg-yolk"/></ingredient>
<ingredient id="s" food="sugar-white">330 g</ingredient><step>Whisk the <use of="y">yolks</use> with the <use of="s">sugar</use>.</step>
</component></fiche>)"};
  const Named top = dish("top", "Top", R"(<ingredient id="b" name="sabayon" from="base.fiche.xml#c">250 g</ingredient><step>Take the <use of="b">sabayon</use>.</step>)");
  tests::TallyLibrary library;
  library.texts["base.fiche.xml"] = base.text;
  const Ordered out = ordered("order", {top, base}, small_kitchen(), {}, library);
  CHECK(out.findings == "");
  CHECK(line_of(out.bytes, "eggs") == "the farm,eggs,5,,5,,5,pc,30,1,25,5 × egg white (165 g),8.40,8.40,EUR,Top,");
  CHECK(line_of(out.bytes, "granulated sugar").starts_with(",granulated sugar,165,,165,,165,g,"));
  CHECK(line_of(out.bytes, "Sabayon") == "made in the house,Sabayon,250,,,,,g,,,,,,,,Top,0.5 batches of base");
  const Ordered both = ordered("order", {top, base}, small_kitchen(), "make=base=1x", library);
  CHECK(line_of(both.bytes, "eggs").starts_with("the farm,eggs,15,,15,,15,pc,30,1,15,15 × egg white (495 g),"));
  const Ordered text = ordered("order-text", {top, base}, small_kitchen(), {}, library);
  CHECK(text.bytes.find("Base: made for the others, not by itself") != std::string::npos);
}

TEST_CASE("of two revisions of a dish the later is counted") {
  Named old = custard();
  old.path = "old.fiche.xml";
  Named later = custard();
  later.text.replace(later.text.find("id=\"custard\""), 12, "id=\"custard\" revision=\"2\"");
  CHECK(line_of(ordered("order", {old, later}, small_kitchen()).bytes, "butter").starts_with("the dairy,butter,400,"));
  CHECK(ordered("order-text", {old, later}, small_kitchen()).bytes.find("not counted: custard.fiche.xml is the same") != std::string::npos);
}

TEST_CASE("a text that a spreadsheet would take for a formula is guarded, and quotes are doubled") {
  const Named odd = dish("odd", "=1+1",
                         R"(<ingredient id="a" name="@home, &quot;best&quot;">5 g</ingredient><ingredient id="b" name="-x">5 g</ingredient>
<step><use of="a">a</use><use of="b">b</use></step>)");
  const std::string csv = ordered("order", {odd}, {}).bytes;
  CHECK(csv.find(",\"'@home, \"\"best\"\"\",5,,5,,5,g,,,,,,,,'=1+1,") != std::string::npos);
  CHECK(csv.find(",'-x,5,,5,,5,g,,,,,,,,'=1+1,") != std::string::npos);
}

TEST_CASE("a pack that cannot be weighed makes no packs and is said") {
  const fiche::Kitchen kitchen = tests::kitchen_with(R"(<food id="house-paste" name="paste" price="4 EUR" pack="1 l" stock="2 l"/>)");
  const std::string csv = ordered("order", {dish("d", "Dish", R"(<ingredient id="p" food="house-paste">50 g</ingredient><step><use of="p">p</use></step>)")}, kitchen).bytes;
  CHECK(line_of(csv, "paste") == ",paste,50,,50,,50,g,,,,,,,,Dish,2 l in stock cannot be weighed and is not taken off; it is not known what 1 l weighs: no packs");
}

TEST_CASE("the order of the demo menu reads as it is kept") {
  const fiche::Kitchen kitchen = tests::demo_kitchen();
  const std::string make = "make=damson-almond-tart=48 quince-hazelnut-bay=24 braised-ox-cheek=2x";
  const Ordered csv = ordered("order", demo_menu(), kitchen, make);
  CHECK(csv.findings == "");
  tests::check_kept("order/menu.csv", csv.bytes);
  tests::check_kept("order/menu.txt", ordered("order-text", demo_menu(), kitchen, make).bytes);
  tests::check_kept("order/menu.shell-eggs.txt", ordered("order-text", demo_menu(), kitchen, "whole=egg-yolk egg-white").bytes);
}

TEST_CASE("the order speaks the language of the house") {
  const auto in = [](const std::string& language) {
    const fiche::Kitchen kitchen = tests::kitchen_from("<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"X\" lang=\"" + language +
                                                       "\"><food id=\"carrot\" like=\"carrot\" price=\"6 EUR\" pack=\"5 kg\"/></kitchen>");
    const std::string text = ordered("order", {custard()}, kitchen).bytes;
    return text.substr(0, text.find(','));
  };
  CHECK(in("fr") == "Fournisseur");
  CHECK(in("de") == "Lieferant");
  CHECK(in("es-MX") == "Proveedor");
  CHECK(in("nl") == "Supplier");
}
