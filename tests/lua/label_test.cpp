#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <string>

#include "tests/lua/hosting.h"
#include "tests/tally/tallying.h"

// The export "label": whole labels of the demo kitchen beside the test, and what is said where there is none. What a label
// must say: Regulation (EU) 1169/2011, Articles 9, 13, 16 to 35 and 44, Directive 2011/91/EU; 21 CFR 101.3 to 101.9.

using namespace tamis;
using tests::project_file;

namespace {

const std::string tart = "desserts/damson-almond-tart";
/// All that a kitchen tells once, and of the day at hand.
const std::string told = "address=2 Slip Lane, 1000 Farbank|made=2026-11-27|mark=best-before";

struct Made {
  std::string text;   ///< "" where it refused
  std::string said;   ///< line: message, a line each
};

Made made(const std::string& fiche, const std::string& path, std::string_view settings, const std::string& addition = "label-text",
          const fiche::Kitchen& kitchen = tests::demo_kitchen()) {
  const tests::Loaded loaded = tests::load_boxed("label", settings);
  REQUIRE(loaded.lines() == "");
  tests::TallyLibrary library;
  const auto document = tests::document_of(fiche, path);
  REQUIRE(document != nullptr);
  Made out;
  for (const lua::Addition& one : loaded.plugin->manifest().additions) {
    if (one.id != addition) continue;
    const lua::Exported files = loaded.plugin->export_fiche(one, document, kitchen, library);
    for (const base::Finding& finding : files.findings) {
      CHECK(finding.severity == base::Severity::warning);
      CHECK(!finding.advice.empty());
      out.said += std::to_string(document->source().place(finding.where.begin).line) + ": " + finding.message + "\n";
    }
    if (!files.files.empty()) out.text = files.files.front().bytes;
  }
  CHECK(out.text.empty() != out.said.empty());
  return out;
}

Made of_demo(const std::string& fiche, const std::string& settings, const std::string& addition = "label-text") {
  const std::string path = "tests/kitchen/" + fiche + ".fiche.xml";
  return made(project_file(path), path, settings, addition);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// Two foods with specifications, in a kitchen with a name: all that a label needs is what `yield` and `keep` say.
Made biscuit(const std::string& yield, const std::string& keep, const std::string& settings, const std::string& lang = "en") {
  const std::string fiche = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"" + lang + "\" units=\"metric\">\n<title>Biscuit</title>\n" + yield +
                            "\n<component id=\"c\" title=\"Biscuit\"><ingredient id=\"b\" food=\"butter-unsalted\">100 g</ingredient>"
                            "<ingredient id=\"f\" food=\"almond-ground\">200 g</ingredient>"
                            "<step>Mix <use of=\"b\">butter</use> and <use of=\"f\">almonds</use>.</step>\n" + keep +
                            "</component><allergens contains=\"milk nuts\" may-contain=\"gluten\"/></fiche>";
  return made(fiche, "a.fiche.xml", settings);
}

const std::string three_each = R"(<yield portions="3" each="100 g"/>)";
const std::string keeps = R"(<keep where="fridge" at="at most 4 °C" for="5 days">Wrapped. Once open, eat within two days.</keep>)";

}  // namespace

TEST_CASE("labels of the demo kitchen read as they are kept", "[label]") {
  tests::check_kept("totals/damson-almond-tart.label.txt", of_demo(tart, told).text);
  tests::check_kept("totals/damson-almond-tart.us.label.txt", of_demo(tart, told + "|law=us|nutrition=exempt").text);
  tests::check_kept("totals/damson-almond-tart.loose.label.txt", of_demo(tart, "kind=loose").text);
  tests::check_kept("totals/damson-almond-tart.us-loose.label.txt", of_demo(tart, "kind=loose|law=us").text);
  tests::check_kept("totals/quince-hazelnut-bay.components.label.txt", of_demo("desserts/quince-hazelnut-bay", "list=components|trial=yes").text);
  tests::check_kept("totals/braised-ox-cheek.label.txt", of_demo("mains/braised-ox-cheek", "trial=yes").text);
}

TEST_CASE("there is no label while anything is assumed, unknown or missing, and each thing is said where it stands", "[label]") {
  const Made none = of_demo("mains/braised-ox-cheek", "");
  CHECK(none.text.empty());
  CHECK(has(none.said, "no dated specification from the supplier, so allergens are assumed: beer"));
  CHECK(has(none.said, "there is no date, and no day it was made"));
  const Made tart_alone = of_demo(tart, "");
  CHECK(tart_alone.said == "3: there is no date, and no day it was made\n39: nobody has said whether the date is use-by or best-before\n"
                           "3: there is no lot, nor a date that stands for one\n3: there is no address of the business\n");
}

TEST_CASE("a trial label is marked all over as not for sale", "[label]") {
  const std::string text = of_demo("mains/braised-ox-cheek", "trial=yes").text;
  CHECK(has(text, "*** TRIAL: NOT FOR SALE ***"));
  CHECK(has(text, "Not ready to print"));
  const std::string page = of_demo("mains/braised-ox-cheek", "trial=yes", "label").text;
  CHECK(has(page, "<title>Trial: not for sale. "));
  CHECK(has(page, "class=\"all-over\""));
  CHECK(has(page, "<main class=\"trial\""));
  CHECK(!has(of_demo(tart, told, "label").text, "not for sale"));
}

TEST_CASE("the date is counted from the day it was made, by the keep", "[label]") {
  const auto date = [](const std::string& settings, const std::string& keep = keeps) {
    return biscuit(three_each, keep, "address=Farbank|" + settings);
  };
  CHECK(has(date("mark=use-by|made=2026-11-27").text, "Use by: 2\u00a0December\u00a02026."));
  CHECK(has(date("mark=use-by|made=2028-02-26").text, "Use by: 2\u00a0March\u00a02028."));  // a leap year
  CHECK(has(date("mark=use-by|made=2026-12-29").text, "Use by: 3\u00a0January\u00a02027."));
  CHECK(has(date("mark=best-before|date=2027-03-01").text, "Best before: 1\u00a0March\u00a02027."));
  CHECK(has(date("mark=use-by|made=2026-11-27|law=us|nutrition=exempt").text, "Use by: December 2, 2026."));
  const std::string range = R"(<keep where="fridge" for="2 to 3 days">Wrapped.</keep>)";
  CHECK(has(date("mark=use-by|made=2026-11-27", range).text, "Use by: 29\u00a0November\u00a02026."));
  CHECK(date("mark=use-by|made=2026-02-30").said == "2: \"2026-02-30\" is no day\n2: there is no lot, nor a date that stands for one\n");
  CHECK(has(date("mark=use-by|made=2026-11-27", "<keep where=\"fridge\">Wrapped.</keep>").said, "5: the fiche does not say how long it keeps\n"));
}

TEST_CASE("how it is kept, once open too, comes from the keep, or is told", "[label]") {
  const std::string day = "address=Farbank|mark=use-by|made=2026-11-27|";
  CHECK(has(biscuit(three_each, keeps, day).text, "Storage: keep in the fridge, at most 4\u00a0°C.\nOnce opened: Once open, eat within two days.\n"));
  CHECK(has(biscuit(three_each, keeps, day + "storage=keep cool|opened=eat the same day").text, "Storage: keep cool.\nOnce opened: eat the same day.\n"));
  CHECK(has(biscuit(three_each, R"(<keep for="1 day" where="freezer" at="-18 °C" thaw="overnight in the fridge"/>)", day).text,
            "keep in the freezer, at \u221218\u00a0°C.\nInstructions: to thaw: overnight in the fridge.\n"));
  CHECK(biscuit(three_each, "", day).said == "2: the fiche does not say how long it keeps\n2: the fiche does not say how it is kept\n"
                                             "2: there is no lot, nor a date that stands for one\n");
}

TEST_CASE("net quantity is of one pack, in grams or millilitres, in the US in ounces too", "[label]") {
  const std::string day = "address=Farbank|mark=use-by|made=2026-11-27|";
  CHECK(has(biscuit(three_each, keeps, day).text, "\n100\u00a0g\n"));
  CHECK(has(biscuit(three_each, keeps, day + "quantity=1.5 kg").text, "\n1.5\u00a0kg\n"));
  CHECK(has(biscuit(three_each, keeps, day + "quantity=75 cl").text, "\n750\u00a0ml\n"));
  const std::string us = day + "law=us|nutrition=exempt|";
  CHECK(has(biscuit(three_each, keeps, us).text, "\nNet Wt 3.5 oz (100\u00a0g)\n"));
  CHECK(has(biscuit(three_each, keeps, us + "quantity=680 g").text, "\nNet Wt 24 oz (1 lb 8 oz) (680\u00a0g)\n"));
  CHECK(has(biscuit(three_each, keeps, us + "quantity=355 ml").text, "\nNet 12 fl oz (355\u00a0ml)\n"));
  CHECK(biscuit(R"(<yield portions="3"/>)", keeps, day).said == "3: the net quantity is not stated\n");
  CHECK(biscuit(R"(<yield portions="3" each="95 to 105 g"/>)", keeps, day).said == "3: the net quantity 95–105\u00a0g is no single mass or volume\n");
  CHECK(biscuit(three_each, keeps, day + "quantity=plenty").said == "2: the net quantity \"plenty\" is no measure\n");
}

TEST_CASE("lot, origin, warnings and alcohol are printed when told, and asked for where the law does", "[label]") {
  const std::string day = "address=Farbank|mark=use-by|made=2026-11-27|";
  const std::string all = biscuit(three_each, keeps, day + "lot=26-331|origin=Farland|warnings=Contains liquorice|alcohol=12.46").text;
  for (const char* line : {"\nLot: L26-331.\n", "\nOrigin: Farland.\n", "\nWarning: Contains liquorice.\n", "\nAlc.: 12.5\u00a0% vol.\n"}) CHECK(has(all, line));
  CHECK(!has(biscuit(three_each, keeps, day + "alcohol=1.2").text, "Alc."));
  CHECK(biscuit(three_each, keeps, day + "alcohol=strong").said == "2: alcohol \"strong\" is no figure in % by volume\n");
  CHECK(biscuit(three_each, keeps, day + "drink=yes").said ==
        "4: it may have more than 1.2 % of alcohol by volume, and the figure is not stated\n");  // the table has none of almonds
  CHECK(has(biscuit(three_each, keeps, day + "drink=yes|alcohol=0.4").text, "Biscuit"));
}

TEST_CASE("nutrition is left out where the law lets the house; in the US there is no panel of ours", "[label]") {
  const std::string day = "address=Farbank|mark=use-by|made=2026-11-27|";
  CHECK(has(biscuit(three_each, keeps, day).text, "\nNutrition\n"));
  CHECK(!has(biscuit(three_each, keeps, day + "nutrition=exempt").text, "\nNutrition\n"));
  CHECK(has(biscuit(three_each, keeps, day + "law=us").said, "no Nutrition Facts panel: trans fat"));
  const std::string us = biscuit(three_each, keeps, day + "law=us|nutrition=elsewhere").text;
  CHECK(has(us, "Not printed: the Nutrition Facts panel."));
  CHECK(!has(us, "Calories"));
}

TEST_CASE("a label of loose food is its name and allergens, each cereal and nut by its name", "[label]") {
  const std::string loose = biscuit("", "", "kind=loose").text;
  CHECK(has(loose, "Biscuit\n=======\n\nContains: almonds, milk.\nMay contain: cereals containing gluten.\n"));
  CHECK(!has(loose, "Ingredients"));
  CHECK(has(made(R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en" units="metric"><title>Cream</title><component id="c" title="C">
<ingredient id="b" food="sesame-seed">100 g</ingredient><step>Toast the <use of="b">seeds</use>.</step></component></fiche>)", "a.fiche.xml",
                 "kind=loose").said, "1: the fiche states no allergens\n"));
}

TEST_CASE("printed letters and figures are as high as the law asks", "[label]") {
  const std::string day = "address=Farbank|mark=use-by|made=2026-11-27|";
  const auto page = [&](const std::string& settings) { return of_demo(tart, told + settings, "label").text; };
  CHECK(has(page(""), "--letters:2.7mm"));
  CHECK(has(page("|small=yes"), "--letters:2.1mm"));
  CHECK(has(page(""), "font-size:max(4.5mm,1.1em)"));                // 120 g: 3 mm
  CHECK(has(page("|quantity=50 g"), "font-size:max(3.0mm,1.1em)"));  // 2 mm
  CHECK(has(page("|quantity=1000 g"), "font-size:max(5.9mm,1.1em)"));
  CHECK(has(page("|quantity=1.2 kg"), "font-size:max(8.9mm,1.1em)"));
}
