#include <catch2/catch.hpp>

#include "core/food/allergen_bits.h"
#include "core/tally/allergens.h"
#include "tests/rules/checking.h"

using namespace tamis;
namespace allergen = food::allergen;

namespace {

std::vector<tally::AllergenLine> lines_of(const std::string& inside, const fiche::Kitchen& kitchen = {},
                                          fiche::Library& library = fiche::empty_library()) {
  const std::string text = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"x\" lang=\"en\" units=\"metric\"><title>T</title>" + inside + "</fiche>";
  format::Read read = format::read(std::make_shared<const base::Source>("x.fiche.xml", text));
  REQUIRE(read.document);
  return tally::allergen_lines(*read.document, kitchen, library);
}

std::string text_of(const tally::AllergenLine& line) {
  std::string out = line.food + ": " + tally::allergen_list(line.sure, " ");
  if (line.usual != 0) out += " usual " + tally::allergen_list(line.usual, " ");
  if (line.may != 0) out += " may " + tally::allergen_list(line.may, " ");
  if (!line.specified.empty()) out += " by " + line.specified;
  if (line.option) out += " option";
  if (line.unknown) out += " unknown";
  return out;
}

std::string component(const std::string& lines) { return "<component id=\"a\" title=\"A\">" + lines + "</component>"; }

}  // namespace

TEST_CASE("every allergen carries where it comes from and how sure it is", "[tally]") {
  const fiche::Kitchen kitchen = tests::kitchen_of(
      R"(<food id="plain-flour" name="mill flour" like="flour-wheat-white" contains="gluten wheat" may-contain="soy" specified="2026-03-02"/>)");
  const auto lines = lines_of(component(R"(<ingredient food="plain-flour">1 g</ingredient>
<ingredient food="chocolate-dark-70" name="dark chocolate">1 g</ingredient><ingredient food="sugar-white">1 g</ingredient>
<ingredient food="no-such-food" name="spice mix">1 g</ingredient><ingredient food="milk-whole" purpose="bath">1 g</ingredient>)"),
                              kitchen);
  REQUIRE(lines.size() == 3);
  CHECK(text_of(lines[0]) == "mill flour: gluten wheat may soy by 2026-03-02");
  CHECK(text_of(lines[1]) == "dark chocolate:  usual soy");
  CHECK(text_of(lines[2]) == "spice mix:  unknown");
}

TEST_CASE("options, later choices and swaps are told apart from what is always in it", "[tally]") {
  const auto lines = lines_of(component(
      R"(<ingredient food="cream-35" name="cream" optional="yes">1 g</ingredient><choice><ingredient food="walnut" name="walnuts">1 g</ingredient>
<ingredient food="peanut-butter" name="peanut butter">1 g</ingredient></choice><ingredient food="oil-olive" name="oil">1 g<swap food="butter-unsalted"/></ingredient>)"));
  REQUIRE(lines.size() == 4);
  CHECK(text_of(lines[0]) == "cream: milk option");
  CHECK(text_of(lines[1]) == "walnuts: nuts");
  CHECK(text_of(lines[2]) == "peanut butter: peanut option");
  CHECK(text_of(lines[3]) == "unsalted butter: milk option");
}

TEST_CASE("a component whose file cannot be opened is not known, and one that can brings its own with overrides", "[tally]") {
  tests::TextLibrary library;
  library.texts["base.fiche.xml"] = R"(<fiche xmlns="urn:tamis:fiche:1" id="base" lang="en"><title>Base</title>
<component id="paste" title="Paste"><ingredient id="nuts" food="walnut">10 g</ingredient><ingredient id="fat" food="butter-unsalted">10 g</ingredient></component></fiche>)";
  const auto lines = lines_of(
      R"(<component id="p" title="P" from="base.fiche.xml#paste"><override ingredient="fat" food="peanut-butter">10 g</override></component>
<component id="q" title="Q" from="nowhere.fiche.xml"/>)", {}, library);
  REQUIRE(lines.size() == 3);
  CHECK(text_of(lines[0]) == "walnuts in Base: nuts");
  CHECK(text_of(lines[1]) == "peanut butter: peanut");
  CHECK(text_of(lines[2]) == "Q:  unknown");
}
