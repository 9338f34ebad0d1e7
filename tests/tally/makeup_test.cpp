#include <cmath>

#include "tests/tally/tallying.h"

using namespace tamis;
using tests::tally_fiche;
using tests::tally_of;

namespace {

std::string one(const std::string& inside) { return tally_fiche("<component id=\"c\" title=\"C\">" + inside + "</component>"); }

const std::string cream_and_milk = R"(<ingredient id="a" food="cream-35" name="cream">500 g</ingredient>
<ingredient id="b" food="milk-whole" name="milk">300 g</ingredient>)";

}  // namespace

TEST_CASE("what is made of every demo fiche weighs what its flow says, less what its yield leaves out", "[tally]") {
  const char* path = GENERATE("base/custard", "base/sweet-pastry", "base/brown-chicken-stock", "bakes/laminated-rolls",
                              "desserts/buckwheat-pear-frame", "desserts/damson-almond-tart", "desserts/quince-hazelnut-bay",
                              "mains/braised-ox-cheek", "mains/roast-leg-of-lamb", "preserves/damson-jam",
                              "soups/celeriac-apple-soup");
  CAPTURE(path);
  const auto tally = tests::demo_tally(path);
  CAPTURE(tally->entries(), tally->doubts());
  REQUIRE(tally->makeup.mass);
  double left = 0;
  bool unknown = false;
  for (const tally::Doubt& doubt : tally->makeup.doubts) {
    if (doubt.kind == tally::Doubt::Kind::left_behind || doubt.kind == tally::Doubt::Kind::cooked_down) left += doubt.grams;
    unknown = unknown || doubt.kind == tally::Doubt::Kind::yield_for_mass;
  }
  CHECK(unknown == !tally->flow.whole.out.has_value());
  if (unknown) return;
  CHECK(*tally->makeup.mass + left >= tally->flow.whole.out->low - 0.01);
  CHECK(*tally->makeup.mass + left <= tally->flow.whole.out->high + 0.01);
  double sum = -tally->makeup.water_out;
  for (const tally::Entry& entry : tally->makeup.entries) sum += entry.served;
  CHECK(sum == Approx(*tally->makeup.mass));
}

TEST_CASE("what stays in the bowl is of everything alike, what cooks off is water", "[tally]") {
  const auto bowl = tally_of(one("<yield portions=\"10\"><loss what=\"bowl\" amount=\"10 %\"/></yield>" + cream_and_milk +
                                 "<step>Whisk the <use of=\"a\">cream</use> and <use of=\"b\">milk</use>.</step>"));
  CHECK(bowl->entries() == "cream 450/500, milk 270/300");
  CHECK(bowl->makeup.mass == Approx(720));
  CHECK(bowl->makeup.portion_mass == Approx(72));
  CHECK(bowl->doubts() == "");
  const auto cooked = tally_of(one("<yield><loss what=\"cooking\" amount=\"200 g\"/></yield>" + cream_and_milk +
                                   "<step>Boil the <use of=\"a\">cream</use> and <use of=\"b\">milk</use>.</step>"));
  CHECK(cooked->entries() == "cream 500/500, milk 300/300");
  CHECK(cooked->makeup.water_out == Approx(200));
  CHECK(cooked->makeup.mass == Approx(600));
  const auto reduced = tally_of(one(cream_and_milk + "<step reduce-to=\"500 g\">Boil the <use of=\"a\">cream</use> and <use of=\"b\">milk</use>.</step>"));
  CHECK(reduced->makeup.water_out == Approx(300));
  CHECK(reduced->makeup.mass == Approx(500));
}

TEST_CASE("what is taken out is gone; of what is weighed lighter than it went in, the rest stayed", "[tally]") {
  const auto out = tally_of(one(R"(<ingredient id="m" food="milk-whole" name="milk">1 kg</ingredient><ingredient id="h" food="hazelnut" name="hazelnuts">200 g</ingredient>
<step do="infuse strain" removes="h">Infuse the <use of="m">milk</use> with the <use of="h">hazelnuts</use> and strain.</step>)"));
  CHECK(out->entries() == "milk 1000/1000, hazelnuts 0/200");
  CHECK(out->makeup.entries[1].used == Approx(200));  // they are paid for
  CHECK(out->doubts() == "taken_out hazelnuts 0");
  const auto weighed = tally_of(one(R"(<ingredient id="m" food="water" name="water">1 kg</ingredient><ingredient id="h" food="hazelnut" name="hazelnuts">200 g</ingredient>
<step do="infuse strain" removes="h">Infuse the <use of="m">water</use> with the <use of="h">hazelnuts</use> and strain.<loss what="straining" amount="150 g"/></step>)"));
  CHECK(weighed->entries() == "water 1000/1000, hazelnuts 50/200");
  CHECK(weighed->doubts() == "taken_out hazelnuts 50");
}

TEST_CASE("half and the rest of an ingredient both arrive; what is not taken on stays behind", "[tally]") {
  const auto halves = tally_of(tally_fiche(R"(<component id="p" title="P"><ingredient id="a" food="sugar-white" name="sugar">100 g</ingredient>
<ingredient id="b" food="butter-unsalted" name="butter">300 g</ingredient>
<step makes="x">Mix <use of="a" take="1/4">a quarter of the sugar</use> with the <use of="b">butter</use>.</step>
<step>Roll the <use of="x" take="65 g">butter</use> in <use of="a" take="the rest">the rest</use>.</step></component>)"));
  // 325 g of butter and sugar, 65 g of which are a fifth.
  CHECK(halves->entries() == "sugar 80/100, butter 60/300");
  CHECK(halves->makeup.mass == Approx(140));
}

TEST_CASE("the author's own choice and what is always in it are followed, and what is no food is listed apart", "[tally]") {
  const auto way = tally_of(one(R"(<choice><ingredient id="o" food="oil-olive" name="oil">20 g</ingredient><ingredient id="b" food="butter-unsalted" name="butter">25 g</ingredient></choice>
<ingredient id="n" food="walnut" name="walnuts">100 g</ingredient><ingredient id="z" food="salt" name="salt">to taste</ingredient>
<ingredient id="c" food="cream-35" name="cream" optional="yes">50 g</ingredient><ingredient id="t" food="butter-unsalted" name="tin butter" purpose="tin">10 g</ingredient>
<step>Toast the <use of="n">walnuts</use> in <use of="o b">oil</use>, <use of="z">salt</use>, <use of="c">cream</use>, in the <use of="t">tin</use>.</step>)"));
  CHECK(way->entries() == "oil 20/20, walnuts 100/100, salt 0/? trace, tin butter 0/10 not of the food");
}

TEST_CASE("another file's component comes in for what is taken of it, with its overrides", "[tally]") {
  tests::TallyLibrary library;
  library.texts["base.fiche.xml"] = tally_fiche(R"(<component id="cream" title="Butter cream"><yield><loss what="bowl" amount="20 %"/></yield>
<ingredient id="s" food="sugar-white" name="sugar">400 g</ingredient><ingredient id="f" food="butter-unsalted" name="butter">600 g</ingredient>
<step>Beat the <use of="s">sugar</use> and <use of="f">butter</use>.</step></component>)");
  const auto taken = tally_of(tally_fiche(R"(<component id="c" title="Cream" from="base.fiche.xml#cream" take="200 g"><override ingredient="f" food="cream-35">600 g</override></component>
<component id="d" title="Cake"><ingredient id="e" food="egg-whole" name="egg">50 g</ingredient><step>Spread the <use of="c">cream</use> on <use of="e">egg</use>.</step></component>)"),
                              {}, library);
  // 1000 g go in and 800 g come of it: 200 g are a quarter of them.
  CHECK(taken->entries() == "sugar 80/100, whipping cream 120/150, egg 50/50");
  CHECK(taken->makeup.entries[0].in == "Butter cream");
  const auto missing = tally_of(tally_fiche(R"(<component id="c" title="Cream" from="nowhere.fiche.xml" take="200 g"/>)"));
  CHECK(missing->entries() == "Cream 200/200");
  CHECK(missing->doubts() == "file_missing Cream 200");
}

TEST_CASE("a yield of less than goes in is said, and is water when it is more than bowls keep", "[tally]") {
  const auto yields = [](const std::string& yield) {
    return tally_of(tally_fiche(yield + "<component id=\"c\" title=\"C\">" + cream_and_milk +
                                "<step>Boil the <use of=\"a\">cream</use> and <use of=\"b\">milk</use>.</step></component>"));
  };
  const auto down = yields("<yield portions=\"6\" each=\"100 g\"/>");
  CHECK(down->doubts() == "cooked_down 200");
  CHECK(down->entries() == "cream 500/500, milk 300/300");
  CHECK(down->makeup.portion_mass == Approx(100));
  const auto bowl = yields("<yield mass=\"780 g\"/>");
  CHECK(bowl->doubts() == "left_behind 20");
  CHECK(bowl->entries() == "cream 487.5/500, milk 292.5/300");
  CHECK(yields("<yield mass=\"900 g\"/>")->doubts() == "yield_over 100");
  CHECK(yields("<yield mass=\"800 g\"/>")->doubts() == "");
}

TEST_CASE("what cannot be weighed is said, and nothing is made up for it", "[tally]") {
  const auto tally = tally_of(one(R"(<ingredient id="a" name="house spice">2 cups</ingredient><ingredient id="b" food="milk-whole" name="milk">300 g</ingredient>
<step>Mix <use of="a">spice</use> and <use of="b">milk</use>.</step>)"));
  CHECK(tally->entries() == "house spice 0/?, milk 300/300");
  CHECK(tally->doubts() == "no_mass house spice 0");
  CHECK(!tally->makeup.mass);
}
