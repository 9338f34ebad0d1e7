#include <catch2/catch.hpp>

#include "tests/rules/checking.h"
#include "tests/shared_files.h"

using namespace tamis;
using tests::check_part;
using tests::check_text;
using tests::kitchen_of;

// Things that look odd and are right. Each was, or could have been, a false alarm.
TEST_CASE("good lines raise nothing") {
  const char* part = GENERATE(
      // Static and fan figures side by side, deck with two heats, a combi's steam.
      R"(<step>Bake at <oven-temp mode="static">180 °C</oven-temp> (<oven-temp mode="fan">160 °C</oven-temp>).</step>)",
      R"(<step>Bake on <oven-temp mode="deck" top="240 °C" bottom="220 °C">240 °C</oven-temp>.</step>)",
      R"(<step>Steam at <oven-temp mode="combi" steam="30 %">160 °C</oven-temp>.</step>)",
      // Hot ovens and gentle ones.
      R"(<step>Bake the pizza at <oven-temp mode="deck">450 °C</oven-temp> for <time>90 s</time>.</step>)",
      R"(<step>Bake in the wood oven at <oven-temp mode="static">420 °C</oven-temp>.</step>)",
      R"(<step>Dry the meringues at <oven-temp mode="fan">200 °F</oven-temp> for <time>1 h</time>.</step>)",
      R"(<step>Keep warm at <oven-temp mode="static">170 °F</oven-temp> for <time>20 min</time>.</step>)",
      R"(<step>Roast slowly at <oven-temp mode="static">200 °F</oven-temp> for <time>6 h</time>.</step>)",
      R"(<step>Prove at <oven-temp mode="steam">30 °C</oven-temp> for <time>1 h</time>.</step>)",
      // Scales side by side as people print them.
      R"(<step>Bake at <oven-temp mode="static" also="350 °F">180 °C</oven-temp>.</step>)",
      R"(<step>Bake at <oven-temp mode="static" also="375 °F">190 °C</oven-temp>.</step>)",
      R"(<step>Bake at <oven-temp mode="static" also="gas mark 4">180 °C</oven-temp>.</step>)",
      R"(<step>Cook to <food-temp also="180–183 °F">82–84 °C</food-temp>.</step>)",
      R"(<step>Hold at <food-temp also="140 °F or higher">60 °C or higher</food-temp>.</step>)",
      R"(<step>Cook to <food-temp was="82 °C">180 °F</food-temp>.</step>)",
      R"(<step>Bake at <oven-temp mode="fan" was="170 °C">325 °F</oven-temp>.</step>)",
      R"(<step>Cut <length also="1/2 in">1 cm</length> cubes, roll to <length also="12 × 20 in">30 × 50 cm</length>.</step>)",
      // Sugar, oil, surfaces, and food baked until it has a temperature of its own.
      R"(<step>Cook the syrup to <food-temp>121 °C</food-temp>, the caramel to <food-temp>185 °C</food-temp>.</step>)",
      R"(<step>Bake until the core reaches <food-temp place="core">96 °C</food-temp>.</step>)",
      R"(<step>Caramelise the sugar in the oven at <oven-temp mode="static">200 °C</oven-temp> to <food-temp>170 °C</food-temp>.</step>)",
      R"(<step>Torch the surface to <food-temp place="surface">300 °C</food-temp>.</step>)",
      R"(<step>Fry in oil at <medium-temp of="frying oil">180 °C</medium-temp>.</step>)",
      R"(<step>Chill in the fridge at <medium-temp of="fridge">3 °C</medium-temp>.</step>)",
      R"(<step>Prove in a room at <room-temp>26–28 °C</room-temp>.</step>)",
      R"(<step>Roast at <oven-temp mode="fan">120 °C</oven-temp> until the core is at <food-temp place="core">54 °C</food-temp>.</step>)",
      // Amounts: words, pinches, ratios, topping up, ranges.
      R"(<ingredient food="salt">to taste</ingredient>)",
      R"(<ingredient food="pepper-black">1 pinch</ingredient>)",
      R"(<ingredient food="sugar-white">50–60 g</ingredient>)",
      R"(<ingredient id="fruit" food="quince">1 kg</ingredient><ingredient food="sugar-white" as-much-as="fruit" by="mass"/>)",
      R"(<ingredient id="syrup" food="sugar-white">1 kg</ingredient><ingredient food="water" tops-up="syrup" to="1.6 kg"/>)",
      R"(<ingredient food="salt" purpose="boiling">10 g</ingredient>)",
      R"(<ingredient food="milk-whole" per="portion">80 ml</ingredient>)",
      // Two systems as kitchens print them.
      R"(<ingredient food="butter-unsalted" also="1 oz">30 g</ingredient>)",
      R"(<ingredient food="butter-unsalted" also="8 oz">225 g</ingredient>)",
      R"(<ingredient food="butter-unsalted" also="1 lb">450 g</ingredient>)",
      R"(<ingredient food="milk-whole" also="2 cups">500 ml</ingredient>)",
      R"(<ingredient food="butter-unsalted" was="250 g">8 3/4 oz</ingredient>)",
      // Mass beside volume: packed, sifted, chopped, and spoons of powders.
      R"(<ingredient food="sugar-brown" prep="packed" also="1 cup">220 g</ingredient>)",
      R"(<ingredient food="sugar-brown" also="1 cup">150 g</ingredient>)",
      R"(<ingredient food="sugar-icing" prep="sifted" also="1 cup">100 g</ingredient>)",
      R"(<ingredient food="sugar-icing" also="1 cup">120 g</ingredient>)",
      R"(<ingredient food="flour-wheat-white" also="1 cup">120 g</ingredient>)",
      R"(<ingredient food="flour-wheat-white" also="1 cup">150 g</ingredient>)",
      R"(<ingredient food="walnut" prep="chopped" also="1 cup">120 g</ingredient>)",
      R"(<ingredient food="walnut" prep="halved" also="1 cup">100 g</ingredient>)",
      R"(<ingredient food="spinach" prep="chopped" also="3 1/4 cups">250 g</ingredient>)",
      R"(<ingredient food="cream-35" also="1 cup">250 g</ingredient>)",
      // Pieces beside mass, with sizes.
      R"(<ingredient food="egg-yolk" pieces="5">90 g</ingredient>)",
      R"(<ingredient food="egg-whole" pieces="4">200 g</ingredient>)",
      R"(<ingredient food="egg-whole" size="L" pieces="4">240 g</ingredient>)",
      R"(<ingredient food="egg-whole" size="M" pieces="4">210 g</ingredient>)",
      R"(<ingredient food="egg-white" pieces="3">100 g</ingredient>)",
      R"(<ingredient food="gelatine-leaf" pieces="5" bloom="200">10 g</ingredient>)",
      R"(<ingredient food="apple" pieces="4" prep="peeled, cored and diced">500 g</ingredient>)",
      R"(<ingredient food="lemon" pieces="2">240 g</ingredient>)",
      // Long and large, and meant.
      R"(<step unattended="18 h">Cure in the fridge.</step>)",
      R"(<step unattended="400 days">Age in the cask.</step>)",
      R"(<step>Hold the garlic at <food-temp for="40 days">60 °C</food-temp>.</step>)",
      R"(<step>Dip in liquid nitrogen at <medium-temp of="liquid nitrogen">-196 °C</medium-temp>.</step>)",
      R"(<ingredient food="salt" name="sea salt for the crust">2 kg</ingredient>)",
      // Names used twice on purpose.
      R"(<choice><ingredient id="nuts" food="walnut">50 g</ingredient><ingredient id="nuts" food="hazelnut">60 g</ingredient></choice><step>Toast the <use of="nuts">nuts</use>.</step>)",
      R"(<step makes="part">Mix.</step><step>Spread the <use of="part">part</use>.</step>)",
      R"(<step branch="hot" makes="held">Hold hot.</step><step branch="cold" makes="held">Chill.</step>)",
      R"(<step>Peel the fruit<gap/>.</step>)");
  CAPTURE(part);
  CHECK(check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"example\" lang=\"en\" units=\"us\">\n<title>T</title>\n"
                   "<component id=\"part\" title=\"Part\">\n" + std::string(part) + "\n</component></fiche>")
            .lines() == "");
}

TEST_CASE("a word of the trade with a meaning of the house raises nothing") {
  const fiche::Kitchen kitchen = kitchen_of(R"(<means word="overnight" time="10 to 16 h"/>)");
  CHECK(check_part(R"(<step>Chill <time>overnight</time>.</step>)", kitchen).lines() == "");
}

TEST_CASE("a kitchen whose ovens all have one mode settles an oven figure") {
  const std::string part = R"(<step>Bake at <oven-temp>180 °C</oven-temp>.</step>)";
  CHECK(check_part(part).rules() == "oven-mode-not-stated");
  CHECK(check_part(part, kitchen_of(R"(<oven id="a" mode="fan"/><oven id="b" mode="fan"/>)")).rules() == "");
  CHECK(check_part(part, kitchen_of(R"(<oven id="a" mode="fan"/><oven id="b" mode="deck"/>)")).rules() ==
        "oven-mode-not-stated");
}

TEST_CASE("the demo kitchen and the worked example raise nothing") {
  const std::string root = TAMIS_SOURCE_DIR;
  const format::Read kitchen_file = format::read(
      std::make_shared<const base::Source>("kitchen.xml", tests::project_file("tests/kitchen/kitchen.xml")));
  REQUIRE(kitchen_file.document);
  const fiche::Kitchen kitchen = fiche::read_kitchen(kitchen_file.document);
  CHECK(check_text(tests::project_file("tests/kitchen/kitchen.xml"), kitchen).lines() == "");

  tests::TextLibrary library;
  library.texts["../base/sweet-pastry.fiche.xml"] = tests::project_file("tests/kitchen/base/sweet-pastry.fiche.xml");
  library.texts["example-glaze.fiche.xml"] = tests::project_file("schemas/example-glaze.fiche.xml");
  for (const char* path : {"tests/kitchen/base/sweet-pastry.fiche.xml", "schemas/example-glaze.fiche.xml",
                           "tests/kitchen/desserts/buckwheat-pear-frame.fiche.xml", "schemas/example.fiche.xml"}) {
    const std::string text = tests::project_file(path);
    if (text.empty()) continue;
    CAPTURE(path);
    CHECK(check_text(text, kitchen, library, path).lines() == "");
  }
}
