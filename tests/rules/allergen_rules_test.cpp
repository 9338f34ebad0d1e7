#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;

namespace {

std::string fiche_of(const std::string& component, const std::string& statement, const std::string& lang = "en") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"x\" state=\"released\" lang=\"" + lang + "\" units=\"metric\"><title>T</title>"
         "<component id=\"a\" title=\"A\">" + component + "<keep for=\"2 days\"/></component>" + statement +
         "<trial date=\"2026-03-14\" verdict=\"passed\"/></fiche>";
}

std::string message(const std::string& component, const std::string& statement, const std::string& lang = "en") {
  const tests::Checked checked = tests::check_text(fiche_of(component, statement, lang));
  for (const base::Finding& finding : checked.findings) {
    if (finding.rule == "allergen-left-out") return finding.message;
  }
  return "";
}

const std::string butter = R"(<ingredient id="b" food="butter-unsalted" name="butter">10 g</ingredient><step do="mix">Mix the <use of="b">butter</use>.</step>)";

}  // namespace

TEST_CASE("what a food holds by what it is must be in the statement") {
  CHECK(message(butter, "<allergens contains=\"egg\"/>") == "the allergens leave out milk (butter)");
  CHECK(message(butter, "<allergens contains=\"milk\"/>") == "");
  CHECK(message(butter, "<allergens may-contain=\"milk\">May hold milk.</allergens>") == "");  // words name it
  CHECK(message(butter, "<allergens contains=\"egg\" may-contain=\"milk\"/>") == "the allergens leave out milk (butter)");
}

TEST_CASE("a statement in plain words is read in English and French, and left alone in other languages") {
  CHECK(message(butter, "<allergens>Milk, egg.</allergens>") == "");
  CHECK(message(butter, "<allergens>None of those that the law names.</allergens>") == "the allergens leave out milk (butter)");
  CHECK(message(butter, "<allergens>Lait.</allergens>", "fr") == "");
  CHECK(message(butter, "<allergens>Aucun.</allergens>", "fr") == "the allergens leave out milk (butter)");
  CHECK(message(butter, "<allergens>Keine.</allergens>", "de") == "");
}

TEST_CASE("gluten and wheat stand for each other in wheat, not in rye") {
  const std::string wheat = R"(<ingredient id="f" food="flour-wheat-white">10 g</ingredient><step do="mix">Mix the <use of="f">flour</use>.</step>)";
  const std::string rye = R"(<ingredient id="f" food="flour-rye">10 g</ingredient><step do="mix">Mix the <use of="f">flour</use>.</step>)";
  CHECK(message(wheat, "<allergens contains=\"gluten\"/>") == "");
  CHECK(message(wheat, "<allergens contains=\"wheat\"/>") == "");
  CHECK(message(rye, "<allergens contains=\"wheat\"/>") == "the allergens leave out gluten (rye flour)");
  CHECK(message(wheat, "<allergens contains=\"egg\"/>") ==
        "the allergens leave out gluten (plain flour), wheat (plain flour)");
}

TEST_CASE("what may be left out, and what is only usual, is not asked") {
  const auto line = [](const std::string& attributes) {
    return "<ingredient id=\"b\" " + attributes + ">10 g</ingredient><step do=\"mix\">Mix the <use of=\"b\">it</use>.</step>";
  };
  const std::string none = "<allergens contains=\"egg\"/>";
  CHECK(message(line("food=\"butter-unsalted\" optional=\"yes\""), none) == "");
  CHECK(message(line("food=\"milk-whole\" purpose=\"bath\""), none) == "");
  CHECK(message(line("food=\"butter-unsalted\" purpose=\"tin\""), none) != "");
  CHECK(message(line("food=\"chocolate-dark-70\""), none) == "");  // soy lecithin is usual, not sure
  CHECK(message(line("food=\"wine-red\""), none) == "");           // sulphites depend on the dish
  CHECK(message(R"(<choice><ingredient id="o" food="oil-olive">10 g</ingredient><ingredient id="b" food="butter-unsalted">10 g</ingredient></choice>
<step do="mix">Mix the <use of="o b">fat</use>.</step>)", none) == "");
}

TEST_CASE("the house's dated specification counts before the usual food, and makes it an error when released") {
  const tamis::fiche::Kitchen house = tests::kitchen_of(
      R"(<food id="spread" like="margarine" contains="milk soy" specified="2026-03-02"/><food id="plain" like="butter-unsalted" contains="" specified="2026-03-02"/>)");
  const std::string spread = R"(<ingredient id="b" food="spread" name="spread">10 g</ingredient><step do="mix">Mix the <use of="b">spread</use>.</step>)";
  const tests::Checked found = tests::check_text(fiche_of(spread, "<allergens>None.</allergens>"), house);
  REQUIRE(found.rules() == "allergen-left-out");
  CHECK(found.findings[0].message == "the allergens leave out soy (spread), milk (spread)");
  CHECK(found.findings[0].severity == base::Severity::error);
  CHECK(found.findings[0].advice.find("specification of 2026-03-02") != std::string::npos);
  const tests::Checked assumed = tests::check_text(fiche_of(butter, "<allergens>None.</allergens>"), house);
  REQUIRE(assumed.rules() == "allergen-left-out");
  CHECK(assumed.findings[0].severity == base::Severity::warning);
  CHECK(assumed.findings[0].advice.find("assumed from the usual food") != std::string::npos);
}

TEST_CASE("components kept in other files bring their allergens along") {
  tests::TextLibrary library;
  library.texts["base.fiche.xml"] =
      R"(<fiche xmlns="urn:tamis:fiche:1" id="base" lang="en" units="metric"><title>Base</title>
<component id="paste" title="Paste"><ingredient id="nuts" food="walnut">10 g</ingredient>
<ingredient id="fat" food="butter-unsalted">10 g</ingredient></component>
<component id="other" title="Other"><ingredient id="fish" food="cod">10 g</ingredient></component></fiche>)";
  const auto left_out = [&](const std::string& component) {
    const tests::Checked checked = tests::check_text(
        "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"x\" state=\"released\" lang=\"en\" units=\"metric\"><title>T</title>" + component +
            "<component id=\"z\" title=\"Z\"><step do=\"serve\">Serve the <use of=\"p\">paste</use>.</step></component>"
            "<allergens contains=\"egg\"/><trial date=\"2026-03-14\" verdict=\"passed\"/></fiche>",
        {}, library);
    for (const base::Finding& finding : checked.findings) {
      if (finding.rule == "allergen-left-out") return finding.message;
    }
    return std::string();
  };
  CHECK(left_out(R"(<component id="p" title="P" from="base.fiche.xml#paste"/>)") ==
        "the allergens leave out milk (unsalted butter in Base), nuts (walnuts in Base)");
  CHECK(left_out(R"(<component id="p" title="P" from="base.fiche.xml#paste"><override ingredient="fat" food="oil-olive">10 g</override></component>)") ==
        "the allergens leave out nuts (walnuts in Base)");
  CHECK(left_out(R"(<component id="p" title="P" from="nowhere.fiche.xml#paste"/>)") == "");
}

TEST_CASE("an allergen that no ingredient can bring is asked about, unless a food is not known") {
  const auto not_found = [](const std::string& component, const std::string& statement) {
    const tests::Checked checked = tests::check_text(fiche_of(component, statement));
    for (const base::Finding& finding : checked.findings) {
      if (finding.rule == "allergen-not-found") return finding.message;
    }
    return std::string();
  };
  CHECK(not_found(butter, "<allergens contains=\"milk celery mustard\"/>") ==
        "the allergens name celery, mustard, and no ingredient brings them");
  CHECK(not_found(butter, "<allergens contains=\"milk\" may-contain=\"nuts\"/>") == "");
  CHECK(not_found(butter, "<allergens contains=\"milk sulphites\"/>") == "");
  CHECK(not_found(butter, "<allergens>Milk, celery.</allergens>") == "");
  const std::string unknown = R"(<ingredient id="u" name="the house's spice mix">10 g</ingredient><step do="mix">Mix the <use of="u">it</use>.</step>)";
  CHECK(not_found(unknown, "<allergens contains=\"celery\"/>") == "");
  const std::string coconut = R"(<ingredient id="u" food="coconut-fresh">10 g</ingredient><step do="mix">Mix the <use of="u">it</use>.</step>)";
  CHECK(not_found(coconut, "<allergens contains=\"nuts\"/>") == "");
  CHECK(not_found(coconut, "<allergens contains=\"milk\"/>") == "the allergens name milk, and no ingredient brings it");
  const std::string chocolate = R"(<ingredient id="u" food="chocolate-dark-70">10 g</ingredient><step do="mix">Mix the <use of="u">it</use>.</step>)";
  CHECK(not_found(chocolate, "<allergens contains=\"soy\"/>") == "");  // usual in it
}

TEST_CASE("what an option brings must be named somewhere in the statement") {
  const auto option = [](const std::string& component, const std::string& statement) {
    const tests::Checked checked = tests::check_text(fiche_of(component, statement));
    for (const base::Finding& finding : checked.findings) {
      if (finding.rule == "allergen-in-an-option") return finding.message;
    }
    return std::string();
  };
  const std::string swap = R"(<ingredient id="o" food="oil-olive" name="oil">10 g<swap food="butter-unsalted">butter</swap></ingredient>
<step do="mix">Mix the <use of="o">oil</use>.</step>)";
  CHECK(option(swap, "<allergens contains=\"\">None.</allergens>") == "with unsalted butter it holds milk, and the allergens do not say so");
  CHECK(option(swap, "<allergens contains=\"nuts\">Milk, when butter is taken.</allergens>") == "");
  CHECK(option(swap, "<allergens contains=\"nuts\" may-contain=\"milk\"/>") == "");
  // What is in it anyway is another rule's.
  CHECK(option(butter + swap, "<allergens contains=\"nuts\"/>") == "");
  const std::string optional = R"(<ingredient id="o" food="cream-35" name="cream" optional="yes">10 g</ingredient>
<step do="mix">Mix the <use of="o">cream</use>.</step>)";
  CHECK(option(optional, "<allergens contains=\"nuts\"/>") == "with cream it holds milk, and the allergens do not say so");
}
