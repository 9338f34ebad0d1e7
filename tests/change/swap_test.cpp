#include <set>

#include "tests/change/swapping.h"

#include "core/fiche/library.h"
#include "core/rules/rule.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

struct Row {
  const char* line;   // the author's, without its id
  const char* words;  // what is asked for the line "it"
  const char* food;
  const char* becomes;
};

std::string line_of(const Row& row) {
  return fiche_around("<ingredient id=\"it\" " + std::string(row.line) +
                      "</ingredient>\n<step>Stir the <use of=\"it\">food</use> in.</step>");
}

std::vector<Row> rows() {
  return {
      // Gelatin Handbook (GMIA), square-root rule, from memory: 9 g x sqrt(200/225) = 8.485 g.
      {R"(food="gelatine-leaf" bloom="200">9 g)", "it=gelatine-powder:225", "gelatine-powder", "8.5 g"},
      {R"(food="gelatine-leaf" bloom="200">10 g)", "it=gelatine-leaf:100", "gelatine-leaf", "14.1 g"},
      {R"(food="gelatine-powder" bloom="220">10 g)", "it=gelatine-powder:160", "gelatine-powder", "11.7 g"},
      // 4 leaves of 2 g; a mass of one part to five of water.
      {R"(food="gelatine-leaf">4 leaves)", "it=gelatine-powder:200", "gelatine-powder", "8 g"},
      {R"(food="gelatine-leaf" bloom="200">10 g)", "it=gelatine-mass:200", "gelatine-mass", "60 g"},
      // Regulation (EC) 589/2008 Article 4: L holds 59.84 g, M 51.04 g; USDA SR28: yolk 17, white 33 of a large egg of 50 g.
      {R"(food="egg-whole" size="L">6)", "it=egg-whole:M", "egg-whole", "7"},
      {R"(food="egg-whole" size="M">4)", "it=egg-whole:L", "egg-whole", "204 g"},
      {R"(food="egg-whole" size="large">4)", "it=egg-whole-frozen", "egg-whole-frozen", "200 g"},
      {R"(food="egg-yolk" pieces="5">85 g)", "it=egg-yolk-frozen", "egg-yolk-frozen", "85 g"},
      {R"(food="egg-white-frozen">330 g)", "it=egg-white", "egg-white", "330 g"},
      {R"(food="egg-whole">500 g)", "it=egg-yolk-frozen+egg-white-frozen", "egg-white-frozen", "330 g"},
      // USDA SR28 01145 and 01003: 81.11 % and 99.48 % of fat.
      {R"(food="butter-unsalted">250 g)", "it=butter-clarified", "butter-clarified", "204 g"},
      {R"(food="butter-clarified">204 g)", "it=butter-unsalted", "butter-unsalted", "250 g"},
      {R"(food="butter-unsalted">500 g)", "it=butter-dry-84", "butter-dry-84", "483 g"},
      // Common practice: 100 g of fresh yeast raise as 40 g of active dry, 33 g of instant.
      {R"(food="yeast-fresh">30 g)", "it=yeast-active-dry", "yeast-active-dry", "12 g"},
      {R"(food="yeast-fresh">30 g)", "it=yeast-instant", "yeast-instant", "10 g"},
      {R"(food="yeast-instant">7 g)", "it=yeast-fresh", "yeast-fresh", "21 g"},
      // Solids by the table: sugar 99.98 %, invert 78 %, glucose syrup 80 %.
      {R"(food="sugar-white">78 g)", "it=sugar-invert", "sugar-invert", "100 g"},
      {R"(food="sugar-white">200 g)", "it=syrup-glucose", "syrup-glucose", "250 g"},
      {R"(food="syrup-glucose">250 g)", "it=sugar-white", "sugar-white", "200 g"},
      // By definition of the cocoa percentage: 210 g of 60 % hold 126 g of cocoa, as 180 g of 70 %.
      {R"(food="chocolate-dark-60">210 g)", "it=chocolate-dark-70", "chocolate-dark-70", "180 g"},
      {R"(food="chocolate-dark-60">210 g)", "it=chocolate-dark-70+sugar-white", "sugar-white", "30 g"},
      {R"(food="chocolate-dark-60" cocoa="66 %">200 g)", "it=chocolate-dark-60:55", "chocolate-dark-60", "240 g"},
      // Pearson's square, worked: 35 % from 48 % and 3.5 %: 31.5 to 13 parts.
      {R"(food="cream-35">445 g)", "it=cream-double:48+milk-whole:3.5", "cream-double", "315 g"},
      {R"(food="cream-35">445 g)", "it=cream-double:48+milk-whole:3.5", "milk-whole", "130 g"},
      {R"(food="cream-35" fat="30 %">500 g)", "it=milk-whole:3+cream-36:35", "cream-36", "422 g"},
  };
}

}  // namespace

TEST_CASE("another food stands in, worked out by what the food is there for") {
  for (const Row& row : rows()) {
    CAPTURE(row.line, row.words);
    const Result made = swapped(line_of(row), row.words);
    CHECK(amount_of(made, row.food) == row.becomes);
    REQUIRE(made.finding("food-swapped") != nullptr);
    CHECK_FALSE(made.finding("food-swapped")->source.empty());
  }
}

TEST_CASE("a swap taken back, and any conversion to the author's units, gives the author's own to the letter") {
  for (const Row& row : rows()) {
    CAPTURE(row.line, row.words);
    const std::string own = line_of(row);
    const std::string there = swapped(own, row.words).xml;
    CHECK(there != own);
    CHECK(converted(there, wish(System::metric)).xml == own);
    const std::string line(row.line);
    const std::size_t begin = line.find('"') + 1;
    const std::string home = "it=" + line.substr(begin, line.find('"', begin) - begin);
    CHECK(swapped(there, home).xml == own);
  }
}

TEST_CASE("a second swap of a line starts from the author's figure, not from the first one's") {
  const std::string own = fiche_around(R"(<ingredient id="y" food="yeast-fresh" name="fresh yeast">10 g</ingredient>)");
  const std::string dry = swapped(own, "y=yeast-active-dry").xml;
  CHECK(amount_of({dry, {}}, "yeast-active-dry") == "4 g");
  const Result instant = swapped(dry, "y=yeast-instant");
  CHECK(inside(instant) ==
        "<ingredient id=\"y\" food=\"yeast-instant\" name=\"instant yeast\" was=\"10 g\" was-name=\"fresh yeast\" "
        "was-food=\"yeast-fresh\">3.3 g</ingredient>\n"
        "<note kind=\"swap\">instant yeast for fresh yeast; it goes into the flour, not into hot or icy water</note>");
}

TEST_CASE("swaps of several lines, one after the other and together, come to the same") {
  const std::string own = fiche_around(
      "<ingredient id=\"b\" food=\"butter-unsalted\">250 g</ingredient>\n<ingredient id=\"g\" food=\"gelatine-leaf\">9 "
      "g</ingredient>");
  const std::string after = swapped(swapped(own, "b=butter-clarified").xml, "g=gelatine-powder:225").xml;
  CHECK(swapped(own, "b=butter-clarified; g=gelatine-powder:225").xml == after);
  CHECK(converted(after, wish(System::metric)).xml == own);
}

TEST_CASE("the strengths of gelatine go by the root, or in a straight line where the kitchen says so") {
  const std::string own = fiche_around(R"(<ingredient id="g" food="gelatine-leaf" bloom="200">10 g</ingredient>)");
  const fiche::Kitchen linear =
      kitchen_of(R"(<kitchen xmlns="urn:tamis:fiche:1" name="K"><rule id="food-swapped" value="linear"/></kitchen>)");
  CHECK(amount_of(swapped(own, "g=gelatine-leaf:100"), "gelatine-leaf") == "14.1 g");
  const Result made = swapped(own, "g=gelatine-leaf:100", linear);
  CHECK(amount_of(made, "gelatine-leaf") == "20 g");
  CHECK(made.finding("food-swapped")->message.find("by the linear rule") != std::string::npos);
}

TEST_CASE("a food of the house counts with what the house states of it") {
  const fiche::Kitchen house = kitchen_of(
      R"(<kitchen xmlns="urn:tamis:fiche:1" name="K"><food id="our-dark" name="our dark" like="chocolate-dark-60" cocoa="56 %"/>)"
      R"(<food id="our-cream" name="our cream" like="cream-35" fat="40 %"/><food id="our-leaf" name="our leaf" like="gelatine-leaf" bloom="250"/></kitchen>)");
  const std::string own = fiche_around(
      "<ingredient id=\"d\" food=\"chocolate-dark-70\">140 g</ingredient>\n<ingredient id=\"k\" food=\"cream-30\">370 "
      "g</ingredient>\n"
      "<ingredient id=\"g\" food=\"gelatine-leaf\" bloom=\"160\">10 g</ingredient>");
  CHECK(inside(swapped(own, "d=our-dark", house)).find("food=\"our-dark\" was=\"140 g\"") != std::string::npos);
  CHECK(amount_of(swapped(own, "d=our-dark", house), "our-dark") == "175 g");  // 70/56
  // 30 % from 40 % and 3 %: 27 to 10 parts.
  CHECK(amount_of(swapped(own, "k=our-cream+milk-whole:3", house), "our-cream") == "270 g");
  CHECK(amount_of(swapped(own, "g=our-leaf", house), "our-leaf") == "8 g");  // 10 x sqrt(160/250)
}

TEST_CASE("the water that a sugar brings goes off the component's water, and comes back with the sugar") {
  const std::string own = fiche_around(
      "<ingredient id=\"w\" food=\"water\" name=\"water\">200 g</ingredient>\n"
      "<ingredient id=\"s\" food=\"sugar-white\" name=\"sugar\">156 g</ingredient>\n"
      "<ingredient id=\"t\" food=\"sugar-white\" name=\"more sugar\">80 g</ingredient>\n<step>Boil all.</step>");
  const Result one = swapped(own, "s=sugar-invert");
  CHECK(amount_of(one, "sugar-invert") == "200 g");
  CHECK(amount_of(one, "water") == "156 g");
  CHECK(with_spaces(one.finding("food-swapped")->message) ==
        "\"sugar\" becomes \"invert sugar\": 200 g; 1.282 times its weight, for the same solids (99.98 % to 78 %); 44 g taken "
        "off "
        "the water; it sweetens as 195 g of sugar, the author's as 156 g");
  const Result two = swapped(one.xml, "t=syrup-glucose");
  CHECK(amount_of(two, "syrup-glucose") == "100 g");
  CHECK(amount_of(two, "water") == "136 g");
  const Result back = swapped(two.xml, "s=sugar-white");
  CHECK(amount_of(back, "water") == "180 g");
  CHECK(swapped(back.xml, "t=sugar-white").xml == own);
}

TEST_CASE("amounts inside sentences follow, and what names the food is pointed at") {
  const std::string own = fiche_around(
      "<ingredient id=\"b\" food=\"butter-unsalted\">250 g</ingredient>\n<ingredient id=\"s\" food=\"sugar-white\" "
      "as-much-as=\"b\" by=\"mass\"/>\n"
      "<step>Melt <use of=\"b\"><amount>100 g</amount> of the butter</use>.</step>\n<step>Rub in <use of=\"b\" take=\"150 "
      "g\">the rest</use>.</step>");
  const Result made = swapped(own, "b=butter-clarified");
  CHECK(with_spaces(made.xml).find("<amount was=\"100 g\">82 g</amount>") != std::string::npos);
  CHECK(with_spaces(made.xml).find("take=\"122 g\" was-take=\"150 g\"") != std::string::npos);
  const base::Finding* said = made.finding("food-swapped");
  REQUIRE(said != nullptr);
  CHECK(with_spaces(said->message) ==
        "\"unsalted butter\" becomes \"clarified butter\": 204 g; 0.815 times its weight, for the same fat "
        "(81.11 % to 99.48 %); 44.4 g less water, 1.74 g less milk solids");
  REQUIRE(said->related.size() == 3);
  CHECK(said->related[0].message == "the sentence says \"100 g of the butter\": see that it still fits");
  CHECK(said->related[2].message == "its amount follows the line that was swapped");
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
}

TEST_CASE("a food that is named in words alone, or where a step explains itself, is pointed at as well") {
  const std::string own = fiche_around(
      "<ingredient food=\"yeast-fresh\" name=\"fresh yeast\">20 g</ingredient>\n<ingredient id=\"m\" food=\"milk-whole\" "
      "name=\"milk\">200 g</ingredient>\n"
      "<step>Crumble the fresh yeast into the <use of=\"m\">milk</use>.<why>Fresh yeast needs no "
      "waking.</why></step>\n<step>Rest the dough.</step>");
  const Result made = swapped(own, "fresh yeast=yeast-instant");
  const base::Finding* said = made.finding("food-swapped");
  REQUIRE(said != nullptr);
  REQUIRE(said->related.size() == 2);
  CHECK(said->related[0].message == "the sentence names fresh yeast: see that it still fits");
  CHECK(said->related[1].message == "this names fresh yeast too");
}

TEST_CASE("amounts for other batches follow, on the line that is put in as well") {
  const std::string own =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\"><title>T</title><yield portions=\"10\"/><yield id=\"big\" "
      "portions=\"100\"/>"
      "<component id=\"c\" title=\"C\">\n<ingredient id=\"k\" food=\"cream-35\">445 g<amount batch=\"big\">4.45 "
      "kg</amount></ingredient>\n"
      "<step>Whip the <use of=\"k\">cream</use>.</step></component></fiche>";
  const Result made = swapped(own, "k=cream-double:48+milk-whole:3.5");
  const std::string xml = with_spaces(made.xml);
  CHECK(xml.find(">315 g<amount batch=\"big\" was=\"4.45 kg\">3.15 kg</amount>") != std::string::npos);
  CHECK(xml.find("fat=\"3.5 %\">130 g") != std::string::npos);
  CHECK(xml.find("<amount batch=\"big\">1.3 kg</amount>") != std::string::npos);
  CHECK(xml.find("<use of=\"k k-2\">cream</use>") != std::string::npos);
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
}

TEST_CASE("a fiche in other units keeps the author's figure through a swap") {
  const std::string own = fiche_around(R"(<ingredient id="b" food="butter-unsalted" name="butter">250 g</ingredient>)");
  const std::string us = converted(own, wish(System::us)).xml;
  const Result made = swapped(us, "b=butter-clarified");
  CHECK(inside(made).find("was=\"250 g\"") != std::string::npos);
  CHECK(amount_of(made, "butter-clarified") == "7 ¼ oz");  // 203.8 g, and 205.5 g are within 2 %
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
  CHECK(amount_of(swapped(made.xml, "b=butter-unsalted"), "butter-unsalted") == "8 ¾ oz");
}

TEST_CASE("a spoon or cup of a food is worked out by its density, before and after") {
  const std::string own = fiche_around(R"(<ingredient id="y" food="yeast-active-dry">2 tsp</ingredient>)", "units=\"us\"");
  // 8 g of active dry raise as 6.67 g of instant: 2.15 spoons of 3.1 g, which no spoon comes near enough to.
  const Result made = swapped(own, "y=yeast-instant");
  CHECK(amount_of(made, "yeast-instant") == "2 ¼ tsp");
  REQUIRE(made.finding("conversion-beyond-tolerance") != nullptr);
  CHECK(with_spaces(made.finding("conversion-beyond-tolerance")->message) ==
        "\"2 tsp\" becomes \"2 ¼ tsp\", 4.6 % off; instant yeast allows 1.0 %");
}

TEST_CASE("a wish that cannot be met says what can") {
  const std::string own = fiche_around(
      "<ingredient id=\"leaf\" food=\"gelatine-leaf\" name=\"gelatine\">9 g</ingredient>\n<ingredient id=\"cream\" "
      "food=\"cream-35\">500 g</ingredient>\n"
      "<ingredient id=\"choc\" food=\"chocolate-dark-70\">100 g</ingredient>\n<ingredient id=\"eggs\" "
      "food=\"egg-whole\">4</ingredient>\n"
      "<ingredient id=\"milk-choc\" food=\"chocolate-milk\">100 g</ingredient>\n<ingredient id=\"flour\" "
      "food=\"flour-wheat-white\">100 g</ingredient>");
  const std::pair<const char*, const char*> rows[] = {
      {"leaf",
       "\"leaf\" says no food that stands in → write it LINE=FOOD, with a figure behind a colon: --swap "
       "leaf=gelatine-powder:225"},
      {"=gelatine-powder",
       "\"=gelatine-powder\" says no line of the ingredients → write it LINE=FOOD, with a figure behind a colon: --swap "
       "leaf=gelatine-powder:225"},
      {"leaf=",
       "\"leaf=\" leaves a food or its figure out → write it LINE=FOOD, with a figure behind a colon: --swap "
       "leaf=gelatine-powder:225"},
      {"leaf=gelatine-powder:",
       "\"leaf=gelatine-powder:\" leaves a food or its figure out → write it LINE=FOOD, with a figure behind a colon: "
       "--swap leaf=gelatine-powder:225"},
      {";", "no swap is named → write it LINE=FOOD, with a figure behind a colon: --swap leaf=gelatine-powder:225"},
      {"cream=milk-whole+cream-30+cream-double",
       "more than two foods cannot stand in for one → make a mix of two of them first"},
      {"laef=gelatine-powder", "no line of the ingredients is \"laef\" → did you mean \"leaf\"?"},
      {"leaf=gelatine-pouder", "no food is called \"gelatine-pouder\" → did you mean \"gelatine-powder\"?"},
      {"leaf=gelatine-powder:strong",
       "\"strong\" is no strength of gelatine → give it in bloom, 80 to 300: gelatine-powder:200"},
      {"leaf=gelatine-powder:2", "\"2\" is no strength of gelatine → give it in bloom, 80 to 300: gelatine-powder:200"},
      {"cream=cream-double",
       "48 % of fat alone does not stand in for 35 % → name what it is mixed with: cream-35=cream-double+milk-whole"},
      {"cream=milk-whole+cream-30",
       "no mix of 3.25 % and 30 % comes to 35 % fat → take one that is fatter and one that is leaner"},
      {"cream=cream-double:thick", "\"thick\" is no fat content → give it in percent: cream-double:35"},
      {"choc=chocolate-dark-60+sugar-white",
       "from 70 % of cocoa to 60 % there is no sugar to add → swap the chocolate alone; what it brings more of sugar is said"},
      {"milk-choc=chocolate-milk-40",
       "how much cocoa is in milk chocolate is not stated → state it: cocoa=\"64 %\" on the line, or "
       "chocolate-milk-40:64"},
      {"choc=chocolate-milk",
       "nothing is known of chocolate-milk in place of chocolate-dark-70 → for it there can stand: chocolate-dark-55, "
       "chocolate-dark-60, chocolate-dark-64, chocolate-dark-80, cocoa-mass"},
      {"eggs=egg-yolk", "nothing is known of egg-yolk in place of egg-whole → for it there can stand: egg-whole-frozen"},
      {"flour=rice", "nothing is known of rice-white in place of flour-wheat-white → work it out by hand, and try one batch"},
      {"eggs=egg-whole:huge",
       "whole egg has no size \"huge\" → sizes are large, extra large, medium, small, jumbo, S, M, L, XL"},
      {"leaf=gelatine-powder; leaf=gelatine-fish", "two swaps for \"gelatine\" → name each line once"},
  };
  for (const auto& [words, says] : rows) {
    CAPTURE(words);
    CHECK(refused(own, words) == says);
  }
}

TEST_CASE("an amount that nobody can read or weigh is not swapped for a guess") {
  const std::string cup = fiche_around(R"(<ingredient id="b" food="butter-unsalted" name="butter">1/2 cup</ingredient>)");
  CHECK(refused(cup, "b=butter-clarified").starts_with("butter: \"cup\" can mean"));
  const std::string dextrose = fiche_around(R"(<ingredient id="s" food="dextrose">2 tbsp</ingredient>)", "units=\"us\"");
  CHECK(refused(dextrose, "s=sugar-white") ==
        "what \"2 tbsp\" of dextrose weighs is not known → give the line a weight, then swap it");
  const std::string taste = fiche_around(R"(<ingredient id="s" food="dextrose">to taste</ingredient>)");
  CHECK(inside(swapped(taste, "s=sugar-white")).find("food=\"sugar-white\"") != std::string::npos);
}

TEST_CASE("what was to be bought of the author's food goes aside, and packs of it keep a line from being swapped") {
  const std::string own = fiche_around(R"(<ingredient id="b" food="butter-unsalted" name="butter" purchase="260 g">250 g</ingredient>)");
  const Result made = swapped(own, "b=butter-clarified");
  CHECK(inside(made).find("was-purchase=\"260 g\"") != std::string::npos);
  CHECK(inside(made).find(" purchase=") == std::string::npos);
  CHECK(swapped(made.xml, "b=butter-unsalted").xml == own);
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
  const std::string us = converted(own, wish(System::us)).xml;
  CHECK(converted(swapped(us, "b=butter-clarified").xml, wish(System::metric)).xml == own);
  const std::string packs = fiche_around(R"(<ingredient id="b" food="butter-unsalted" name="butter" packs="2" pack="block">500 g</ingredient>)");
  CHECK(refused(packs, "b=butter-clarified") ==
        "\"butter\" is counted in packs, and another food is sold in others → give the line a weight without packs, then swap it");
}

TEST_CASE("an egg whose yolk and white are used apart, and one of a choice, are not swapped as one") {
  const std::string parts = fiche_around(
      R"(<ingredient id="e" food="egg-whole">4<part id="y" food="egg-yolk"/><part id="w" food="egg-white"/></ingredient>)");
  CHECK(refused(parts, "e=egg-whole-frozen") ==
        "parts of \"whole egg\" are used apart → write a line for each part, then swap those");
  const std::string choice = fiche_around(
      R"(<choice><ingredient id="c" food="cream-35">100 g</ingredient><ingredient food="milk-whole">100 g</ingredient></choice>)");
  CHECK(refused(choice, "c=cream-double+milk-whole").starts_with("\"whipping cream\" is one of a choice"));
}

TEST_CASE("a swap adds nothing that the check finds fault with") {
  const fiche::Kitchen kitchen;
  const auto rules_of = [&](const std::string& xml) {
    std::set<std::string> out;
    for (const base::Finding& finding : rules::check(*document_of(xml), kitchen, fiche::empty_library())) {
      if (finding.severity >= base::Severity::warning) out.insert(finding.rule);
    }
    return out;
  };
  for (const Row& row : rows()) {
    CAPTURE(row.line, row.words);
    const std::set<std::string> before = rules_of(line_of(row));
    for (const std::string& rule : rules_of(swapped(line_of(row), row.words).xml)) CHECK(before.count(rule) == 1);
  }
}

TEST_CASE("every kind of swap has a line of help and an example that reads") {
  for (const change::SwapHelp& help : change::swap_help()) {
    CAPTURE(help.example);
    CHECK_FALSE(help.what.empty());
    CHECK(change::read_swaps(help.example));
  }
}
