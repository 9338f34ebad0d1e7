#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;

namespace {

const std::string slice = R"(<fiche xmlns="urn:tamis:fiche:1" id="slice" lang="en" units="metric"><title>Slice</title><yield portions="10"/>
<component id="a" title="A"><ingredient id="b" food="butter" name="butter">500 g</ingredient><ingredient id="s" food="sugar-white" name="sugar">300 g</ingredient>
<ingredient id="w" food="water">100 g</ingredient><step do="mix">Mix <use of="b">butter</use>, <use of="s">sugar</use> and <use of="w">water</use>.</step></component></fiche>)";

std::string said(const std::string& kitchen) { return tests::check_text(slice, tests::kitchen_of(kitchen)).lines(); }

const std::string butter = R"(<food id="butter" name="butter" like="butter-unsalted" price="8 EUR" pack="1 kg"/>)";
const std::string sugar = R"(<food id="sugar-white" name="sugar" like="sugar-white" price="1 EUR" pack="1 kg"/>)";

}  // namespace

TEST_CASE("prices are asked for where the dish is sold, and nowhere else") {
  CHECK(said(butter) == "");
  CHECK(said(butter + R"(<sale fiche="other" price="5 EUR"/>)") == "");
  CHECK(said(butter + R"(<sale fiche="slice" price="5 EUR"/>)") ==
        "1:70 price-missing: no price in the kitchen file for sugar: 300 g of the 800 g that are bought\n");
  CHECK(said(butter + sugar + R"(<sale fiche="slice" price="5 EUR"/>)") == "");
  CHECK(said(butter + R"(<food id="sugar-white" name="sugar" like="sugar-white" price="1 GBP" pack="1 kg"/><sale fiche="slice" price="5 EUR"/>)") ==
        "1:70 price-missing: a price in another currency for sugar: 300 g of the 800 g that are bought\n");
  CHECK(said(R"(<food id="butter" name="butter" like="butter-unsalted"/><sale fiche="slice" price="5 EUR"/>)") ==
        "1:70 price-missing: no price counts for butter, sugar: 800 g of the 800 g that are bought\n");
}

TEST_CASE("the house's aim is of the price without tax, and may be met exactly") {
  // 4.30 EUR of food for ten portions, 0.43 EUR each.
  const auto sold = [](const std::string& terms) { return said(butter + sugar + "<sale fiche=\"slice\" " + terms + "/>"); };
  CHECK(sold(R"(price="2.15 EUR" aim="20 %")") == "");
  CHECK(sold(R"(price="2.14 EUR" aim="20 %")") ==
        "1:70 cost-over-aim: the food of a portion is 20.1 % of its price without tax, the house wants at most 20 %\n");
  CHECK(sold(R"(price="2.15 EUR" tax="10 %" aim="20 %")") ==
        "1:70 cost-over-aim: the food of a portion is 22 % of its price without tax, the house wants at most 20 %\n");
  CHECK(sold(R"(price="2.15 EUR" tax="10 %")") == "");
}
