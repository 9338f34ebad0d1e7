#include <catch2/catch.hpp>

#include "core/rules/trade_figures.h"
#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;

namespace {

constexpr const char* spoken_of =
    " yeast-killed yeast-not-woken sugar-stage-against-figure caramel-off-its-heat jam-off-its-setting-point frying-fat-too-hot "
    "doneness-against-core baked-core-off starch-not-cooked dough-out-of-proportion churned-out-of-balance brine-out-of-strength jam-too-thin-to-keep ";

std::string said(const tests::Checked& checked) {
  std::string out;
  for (const base::Finding& finding : checked.findings) {
    if (std::string(spoken_of).find(" " + finding.rule + " ") == std::string::npos) continue;
    out += (out.empty() ? "" : "\n") + finding.rule + ": " + finding.message;
  }
  return out;
}

fiche::Kitchen kitchen_at(const char* altitude) {
  const std::string text = "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\" altitude=\"" + std::string(altitude) + "\"/>";
  return fiche::read_kitchen(format::read(std::make_shared<const base::Source>("kitchen.xml", text)).document);
}

struct Row {
  const char* part;
  const char* expected;
};

void check_rows(const std::vector<Row>& rows, const fiche::Kitchen& kitchen = {}) {
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(said(check_part(row.part, kitchen)) == row.expected);
  }
}

}  // namespace

TEST_CASE("yeast: what it meets is worked out, and what is not known is let be") {
  check_rows({
      // Hot milk over cold flour comes to what yeast survives.
      {R"(<ingredient id="m" food="milk-whole" at="80 °C">300 g</ingredient><ingredient id="f" food="flour-wheat-white">500 g</ingredient><ingredient id="y" food="yeast-fresh">20 g</ingredient><step>Mix the <use of="m">milk</use>, <use of="f">flour</use> and <use of="y">yeast</use>.</step>)",
       ""},
      {R"(<ingredient id="m" food="water" at="62 °C">300 g</ingredient><ingredient id="y" food="yeast-instant">7 g</ingredient><step>Whisk the <use of="y">yeast</use> into the <use of="m">water</use>.</step>)",
       "yeast-killed: the yeast goes into what is at 61–62 °C: it dies from 55 °C on"},
      // Boiled, without a figure; and the same cooled first, in words or by a step.
      {R"(<ingredient id="m" food="milk-whole">300 g</ingredient><ingredient id="y" food="yeast-fresh">20 g</ingredient><step>Crumble the <use of="y">yeast</use> into the <use of="m">boiled milk</use>.</step>)",
       "yeast-killed: the yeast goes into what is at 80–97 °C: it dies from 55 °C on"},
      {R"(<ingredient id="m" food="milk-whole">300 g</ingredient><ingredient id="y" food="yeast-fresh">20 g</ingredient><step do="boil">Boil the <use of="m">milk</use>, let it cool and crumble in the <use of="y">yeast</use>.</step>)",
       ""},
      // Not known how much of it there is, or how warm.
      {R"(<ingredient id="m" food="milk-whole" at="90 °C">some</ingredient><ingredient id="y" food="yeast-fresh">20 g</ingredient><step>Crumble the <use of="y">yeast</use> into the <use of="m">milk</use>.</step>)",
       ""},
      {R"(<ingredient id="m" food="milk-whole">300 g</ingredient><ingredient id="y" food="yeast-fresh">20 g</ingredient><step do="heat" makes="w">Warm the <use of="m">milk</use>.</step><step>Crumble the <use of="y">yeast</use> into the <use of="w">milk</use>.</step>)",
       ""},
      // Makers' packs: 35 to 46 °C; in flour, cold water is a slow dough; instant and fresh yeast do not mind.
      {R"(<ingredient id="w" food="water" at="105–115 °F">200 g</ingredient><ingredient id="y" food="yeast-active-dry">7 g</ingredient><step>Dissolve the <use of="y">yeast</use> in the <use of="w">water</use>.</step>)",
       ""},
      {R"(<ingredient id="w" food="water" at="52 °C">200 g</ingredient><ingredient id="y" food="yeast-active-dry">7 g</ingredient><step>Dissolve the <use of="y">yeast</use> in the <use of="w">water</use>.</step>)",
       "yeast-not-woken: active dry yeast wakes at 38 to 43 °C, and this is at 52 °C"},
      {R"(<ingredient id="w" food="water">200 g</ingredient><ingredient id="y" food="yeast-active-dry">7 g</ingredient><step>Dissolve the <use of="y">yeast</use> in the <use of="w" at="at most 110 °F">water</use>.</step>)", ""},
      {R"(<ingredient id="w" food="water">200 g</ingredient><ingredient id="y" food="yeast-active-dry">7 g</ingredient><step>Dissolve the <use of="y">yeast</use> in the <use of="w" at="at most 150 °F">water</use>.</step>)",
       "yeast-not-woken: active dry yeast wakes at 38 to 43 °C, and \"at most 150 °F\" lets the liquid kill it: it dies from 55 °C on"},
      {R"(<ingredient id="w" food="water" at="8 °C">200 g</ingredient><ingredient id="f" food="flour-wheat-white">300 g</ingredient><ingredient id="y" food="yeast-active-dry">7 g</ingredient><step do="knead">Soak and knead the <use of="f">flour</use>, <use of="y">yeast</use> and <use of="w">water</use>.</step>)",
       ""},
      {R"(<ingredient id="w" food="water" at="8 °C">200 g</ingredient><ingredient id="y" food="yeast-fresh">7 g</ingredient><step>Dissolve the <use of="y">yeast</use> in the <use of="w">water</use>.</step>)",
       ""},
  });
}

TEST_CASE("doughs by the baker's percentage: salt, yeast as fresh, sugar, all water") {
  const auto dough = [](const std::string& lines, const std::string& uses) {
    return "<ingredient id=\"f\" food=\"flour-wheat-white\">1 kg</ingredient>" + lines + "<step do=\"knead\">Knead the <use of=\"f\">flour</use>" + uses + ".</step>";
  };
  const std::string yeast = R"(<ingredient id="y" food="yeast-fresh">20 g</ingredient>)", y = R"(, <use of="y">yeast</use>)";
  const std::string water = R"(<ingredient id="w" food="water">620 g</ingredient>)", w = R"(, <use of="w">water</use>)";
  struct Lines {
    std::string part;
    const char* expected;
  };
  const Lines rows[] = {
      {dough(yeast + water, y + w), ""},
      {dough(yeast + water + R"(<ingredient id="s" food="salt">40 g</ingredient>)", y + w + R"(, <use of="s">salt</use>)"), ""},
      {dough(yeast + water + R"(<ingredient id="s" food="salt">44 g</ingredient>)", y + w + R"(, <use of="s">salt</use>)"),
       "dough-out-of-proportion: salt is 4.4 % of the flour's weight; bread takes 1.8 to 2.2 %"},
      {dough(yeast + water + R"(<ingredient id="s" food="sugar-white">450 g</ingredient>)", y + w + R"(, <use of="s">sugar</use>)"),
       "dough-out-of-proportion: sugar is 45 % of the flour's weight; yeast hardly works above 35 %"},
      {dough(R"(<ingredient id="y" food="yeast-instant">41 g</ingredient>)" + water, y + w),
       "dough-out-of-proportion: yeast, as fresh, is 12 % of the flour's weight; dough takes 1 to 4 %, a rich one up to 8 %"},
      {dough(yeast + R"(<ingredient id="w" food="water">1.62 kg</ingredient>)", y + w),
       "dough-out-of-proportion: all water in the dough is 163 % of the flour's weight; the wettest that is kneaded takes 100 %"},
      {dough(yeast + R"(<ingredient id="w" food="water">62 g</ingredient>)", y + w),
       "dough-out-of-proportion: all water in the dough is 7.6 % of the flour's weight; the stiffest that is kneaded takes 40 %"},
      // Water of eggs, milk and butter counts: 300 g of eggs hold 228 g, 250 g of milk 220 g.
      {dough(yeast + R"(<ingredient id="e" food="egg-whole">300 g</ingredient><ingredient id="m" food="milk-whole">250 g</ingredient>)",
             y + R"(, <use of="e">eggs</use>, <use of="m">milk</use>)"), ""},
      // Unknown: a food nobody knows, a starter, a part kept back; and no yeast.
      {dough(yeast + R"(<ingredient id="x" name="the usual">62 g</ingredient>)", y + R"(, <use of="x">the usual</use>)"), ""},
      {dough(R"(<ingredient id="y" food="sourdough-levain">200 g</ingredient><ingredient id="w" food="water">62 g</ingredient>)", y + w), ""},
      {dough(R"(<ingredient id="w" food="water">300 g</ingredient><ingredient id="s" food="salt">60 g</ingredient>)", w + R"(, <use of="s">salt</use>)"), ""},
  };
  for (const Lines& row : rows) {
    CAPTURE(row.part);
    CHECK(said(check_part(row.part)) == row.expected);
  }
}

TEST_CASE("sugar: one stage beside one figure, at the kitchen's height too") {
  const std::vector<Row> rows = {
      {R"(<step>Boil to <food-temp>118 °C</food-temp>, the firm-ball stage.</step>)", ""},
      {R"(<step>Boil to the soft ball (<food-temp>240 °F</food-temp>).</step>)", ""},
      {R"(<step>Boil to the soft ball (<food-temp>118–120 °C</food-temp>).</step>)", ""},
      {R"(<step>Boil to the hard crack (<food-temp>121 °C</food-temp>).</step>)",
       "sugar-stage-against-figure: \"hard crack\" is sugar at 149–154 °C, not at 121 °C"},
      {R"(<step>Cuire au petit boulé à <food-temp>145 °C</food-temp>.</step>)",
       "sugar-stage-against-figure: \"petit boulé\" is sugar at 112–116 °C, not at 145 °C"},
      // Two stages, or two figures: nobody knows which belongs to which.
      {R"(<step>Boil to <food-temp>121 °C</food-temp>, past the soft ball to the hard ball.</step>)", ""},
      {R"(<step>Boil to the soft ball, <food-temp>115 °C</food-temp>, then on to <food-temp>150 °C</food-temp>.</step>)", ""},
      // Another sentence, other words.
      {R"(<step>Test for the soft ball. Cook the nuts to <food-temp>150 °C</food-temp>.</step>)", ""},
      {R"(<step>Roll into soft balls of dough and warm to <food-temp>30 °C</food-temp>.</step>)", ""},
      {R"(<step>Roll each to a soft ball and bake to <food-temp>94 °C</food-temp>.</step>)", ""},
      {R"(<step>Tie with thread and poach to <food-temp>58 °C</food-temp>.</step>)", ""},
      {R"(<step>Cuire le filet à <food-temp>154 °C</food-temp>.</step>)", ""},
  };
  check_rows(rows);
  // At 2000 m all of it comes 6.7 K sooner; the sea's figure is right as well.
  check_rows({{R"(<step>Boil to the soft ball (<food-temp>107 °C</food-temp>).</step>)", ""},
              {R"(<step>Boil to the soft ball (<food-temp>115 °C</food-temp>).</step>)", ""},
              {R"(<step>Boil to the soft ball (<food-temp>99 °C</food-temp>).</step>)",
               "sugar-stage-against-figure: \"soft ball\" is sugar at 112–116 °C, here 105–109 °C, not at 99 °C"}},
             kitchen_at("2000 m"));
}

TEST_CASE("jam sets 4.5 K above boiling water, wherever the kitchen stands") {
  const auto jam = [](const char* figure, const char* more = "") {
    return R"(<ingredient id="f" food="plum">1 kg</ingredient><ingredient id="s" food="sugar-white">800 g</ingredient>)" + std::string(more) +
           R"(<step do="boil">Boil the <use of="f">plums</use> and <use of="s">sugar</use> to jam at <food-temp>)" + figure + "</food-temp>.</step>";
  };
  CHECK(said(check_part(jam("103 °C"))) == "");
  CHECK(said(check_part(jam("106 °C"))) == "");
  CHECK(said(check_part(jam("101 °C"))) == "jam-off-its-setting-point: jam sets at about 104.5 °C at the sea; at 101 °C it stays runny");
  CHECK(said(check_part(jam("110 °C"))) == "jam-off-its-setting-point: jam sets at about 104.5 °C at the sea; at 110 °C it turns to toffee");
  CHECK(said(check_part(jam("85 °C"))) == "");  // filling, not cooking
  // A syrup with lemon in a cake that is called after its jam.
  CHECK(said(tests::check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="j" lang="en"><title>Jam sponge</title><component id="a" title="Sponge"><step>Bake.</step></component><component id="b" title="Butter cream"><ingredient id="l" food="lemon-juice">20 g</ingredient><ingredient id="s" food="sugar-white">200 g</ingredient><step do="boil">Boil the <use of="l s">syrup</use> to <food-temp>118 °C</food-temp>.</step></component></fiche>)", {}, fiche::empty_library(), "j.fiche.xml")) == "");
  // Sugar cooked first, and the fruit into it.
  CHECK(said(check_part(R"(<ingredient id="f" food="plum">1 kg</ingredient><ingredient id="s" food="sugar-white">800 g</ingredient><step do="boil">Cook the <use of="s">sugar</use> to <food-temp>117 °C</food-temp>, add the <use of="f">plums</use> and boil to jam.</step>)")) == "");
  const fiche::Kitchen high = kitchen_at("2000 m");
  CHECK(said(check_part(jam("98 °C"), high)) == "");
  CHECK(said(check_part(jam("104.5 °C"), high)) ==
        "jam-off-its-setting-point: jam sets at about 97.8 °C at this kitchen's 2000 m; at 104.5 °C it turns to toffee");
}

TEST_CASE("jam for the shelf by what goes in and what comes out") {
  const auto jam = [](const char* sugar, const char* mass, const char* where) {
    const std::string text = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"j\" lang=\"en\"><title>J</title><component id=\"c\" title=\"Plum jam\"><yield mass=\"" + std::string(mass) +
        "\"/><ingredient id=\"p\" food=\"plum\">1 kg</ingredient><ingredient id=\"s\" food=\"sugar-white\">" + sugar +
        "</ingredient><step do=\"boil\">Boil the <use of=\"p\">plums</use> and <use of=\"s\">sugar</use>.</step><keep where=\"" + where + "\" for=\"1 year\"/></component></fiche>";
    return said(tests::check_text(text, {}, fiche::empty_library(), "jam.fiche.xml"));
  };
  // Plums bring 10 % of their weight: USDA SR28 09279, carbohydrate 11.42 less fibre 1.4 g.
  CHECK(jam("900 g", "1.5 kg", "dry store") == "");
  CHECK(jam("500 g", "1.2 kg", "dry store") == "jam-too-thin-to-keep: at most 50 % of this jam is sugar by what goes in; from 60 % on it keeps on a shelf");
  CHECK(jam("500 g", "1.2 kg", "fridge") == "");
}

TEST_CASE("frying fat: potato by the guidance, everything else where fat smokes") {
  check_rows({
      {R"(<ingredient id="p" food="potato">1 kg</ingredient><step>Fry the <use of="p">chips</use> at <medium-temp of="oil">175 °C</medium-temp>.</step>)", ""},
      {R"(<ingredient id="p" food="sweet-potato">1 kg</ingredient><step>Fry the <use of="p">chips</use> at <medium-temp>180 °C</medium-temp>.</step>)",
       "frying-fat-too-hot: potato fried at 180 °C forms more acrylamide: the guidance is 175 °C at most"},
      {R"(<ingredient id="p" food="prawn">1 kg</ingredient><step>Fry the <use of="p">prawns</use> at <medium-temp of="oil">190 °C</medium-temp>.</step>)", ""},
      {R"(<ingredient id="p" food="prawn">1 kg</ingredient><step>Fry the <use of="p">prawns</use> at <medium-temp of="oil">240 °C</medium-temp>.</step>)",
       "frying-fat-too-hot: frying fat at 240 °C smokes and breaks down: most do from 200 °C on"},
      // The fish after the chips, in the same pan.
      {R"(<ingredient id="p" food="potato">1 kg</ingredient><ingredient id="c" food="cod">1 kg</ingredient><step do="fry">Fry the <use of="p">chips</use> at <medium-temp of="oil">170 °C</medium-temp>.</step><step do="fry">Fry the <use of="c">fish</use> at <medium-temp of="oil">185 °C</medium-temp>.</step>)", ""},
      {R"(<ingredient id="p" food="potato">1 kg</ingredient><step>Roast the <use of="p">potatoes</use> at <oven-temp mode="fan">220 °C</oven-temp>.</step>)", ""},
  });
}

TEST_CASE("doneness: the word against the core, for meat that is eaten at any of these") {
  check_rows({
      {R"(<ingredient id="b" food="beef-rib">2 kg</ingredient><step do="roast">Roast the <use of="b">rib</use> rare, to a core of <food-temp>140 °F</food-temp>.</step>)", ""},
      {R"(<ingredient id="b" food="beef-rib">2 kg</ingredient><step do="roast">Roast the <use of="b">rib</use> rare, to a core of <food-temp>65 °C</food-temp>.</step>)",
       "doneness-against-core: \"rare\" is 49–52 °C in the end, and 65 °C in the middle is more done than that"},
      {R"(<ingredient id="b" food="beef-rib">2 kg</ingredient><step do="roast">Roast the <use of="b">rib</use> well done, to a core of <food-temp>80 °C</food-temp>.</step>)", ""},
      {R"(<ingredient id="b" food="beef-rib">2 kg</ingredient><step do="roast">Roast the <use of="b">rib</use>, turning rarely, to a core of <food-temp>65 °C</food-temp>.</step>)", ""},
      {R"(<ingredient id="b" food="beef-rib">2 kg</ingredient><step do="roast">Roast the <use of="b">rare-breed rib</use> to a core of <food-temp>65 °C</food-temp>.</step>)", ""},
      {R"(<ingredient id="b" food="beef-minced">1 kg</ingredient><step do="fry">Fry the <use of="b">burgers</use> rare, to a core of <food-temp>70 °C</food-temp>.</step>)", ""},
      {R"(<ingredient id="b" food="lamb-leg">1 kg</ingredient><step do="roast">Rôtir le <use of="b">gigot</use> saignant, <food-temp place="core">75 °C</food-temp>.</step>)",
       "doneness-against-core: \"saignant\" is 54–57 °C in the end, and 75 °C in the middle is more done than that"},
  });
}

TEST_CASE("cores of what is baked: bread and cake, not what is to stay soft") {
  check_rows({
      {R"(<ingredient id="f" food="flour-wheat-white">200 g</ingredient><ingredient id="e" food="egg-whole">200 g</ingredient><step do="bake">Bake the <use of="f e">sponge</use> to a core of <food-temp>80 °C</food-temp>.</step>)",
       "baked-core-off: a core of 80 °C is raw in the middle: cake and choux are baked at 93 to 99 °C"},
      {R"(<ingredient id="f" food="flour-wheat-white">20 g</ingredient><ingredient id="e" food="egg-whole">200 g</ingredient><step do="bake">Bake the <use of="f e">cheesecake, a cake</use> to a core of <food-temp>70 °C</food-temp>.</step>)", ""},
      {R"(<ingredient id="f" food="flour-wheat-white">200 g</ingredient><ingredient id="e" food="egg-whole">200 g</ingredient><step do="bake">Bake the <use of="f e">tart</use> to a core of <food-temp>80 °C</food-temp>.</step>)", ""},
      // 180 °F, as charts print it for rich doughs; and bread that rests after the oven.
      {R"(<ingredient id="f" food="flour-wheat-white">1 kg</ingredient><ingredient id="y" food="yeast-fresh">30 g</ingredient><ingredient id="w" food="water">600 g</ingredient><step do="knead" makes="d">Knead the <use of="f y w">dough</use>.</step><step do="bake" makes="l">Bake the <use of="d">loaf</use> to a core of <food-temp>180 °F</food-temp>.</step><step do="rest">Rest the <use of="l">loaf</use> until its core is at <food-temp>60 °C</food-temp>.</step>)", ""},
  });
}

TEST_CASE("starch: heated later, or boiled by the word, is let be") {
  const std::string lines = R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="s" food="starch-maize">35 g</ingredient>)";
  const std::string warm = R"(<step do="cook" makes="x">Cook the <use of="s">starch</use> in the <use of="m">milk</use> to <food-temp>55 °C</food-temp>.</step>)";
  CHECK(said(check_part((lines + warm).c_str())) == "starch-not-cooked: maize starch thickens between 62 and 75 °C, and it is only taken to 55 °C");
  CHECK(said(check_part((lines + warm + R"(<step do="boil">Boil the <use of="x">cream</use>.</step>)").c_str())) == "");
  CHECK(said(check_part((lines + R"(<step do="boil">Boil the <use of="s">starch</use> in the <use of="m">milk</use>, from <food-temp>55 °C</food-temp> on stirring.</step>)").c_str())) == "");
}

TEST_CASE("ices: sorbet by its sugars and solids, and nothing where a part is not known") {
  const auto sorbet = [](const char* sugar, const char* more = "") {
    return R"(<ingredient id="l" food="lemon-juice">400 g</ingredient><ingredient id="w" food="water">600 g</ingredient><ingredient id="s" food="sugar-white">)" +
           std::string(sugar) + "</ingredient>" + more + R"(<step do="stir" makes="mix">Stir the <use of="l">juice</use>, <use of="w">water</use> and <use of="s">sugar</use>.</step><step do="churn">Churn.</step>)";
  };
  CHECK(said(check_part(sorbet("380 g"))) == "");
  CHECK(said(check_part(sorbet("80 g"))) ==
        "churned-out-of-balance: the mix that is churned has 8.3 % of sugars, and such an ice takes 20 to 33 %; it begins to freeze at -0.8 °C");
  CHECK(said(check_part(sorbet("800 g"))).starts_with("churned-out-of-balance: the mix that is churned has 45 % of sugars"));
  const std::string unknown = R"(<ingredient id="l" name="the usual base">400 g</ingredient><ingredient id="s" food="sugar-white">800 g</ingredient><step do="stir">Stir the <use of="l s">two</use>.</step><step do="churn">Churn.</step>)";
  CHECK(said(check_part(unknown.c_str())) == "");
  const auto ice = [](const char* sugar, const char* salt) {
    return R"(<ingredient id="m" food="milk-whole">600 g</ingredient><ingredient id="c" food="cream-36">300 g</ingredient><ingredient id="s" food="sugar-white">)" +
           std::string(sugar) + R"(</ingredient><ingredient id="n" food="salt">)" + salt + R"(</ingredient><step do="stir">Stir the <use of="m c s n">mix</use>.</step><step do="churn">Churn.</step>)";
  };
  CHECK(said(check_part(ice("190 g", "1 g"))) == "");
  CHECK(said(check_part(ice("30 g", "1 g"))).starts_with("churned-out-of-balance: the mix that is churned has 7.4 % of sugars, and such an ice takes 13 to 27 %"));
  CHECK(said(check_part(ice("30 g", "12 g"))).find("sugars") == std::string::npos);  // savoury
  CHECK(said(check_part(R"(<ingredient id="c" food="cream-36">1 kg</ingredient><step>Churn the <use of="c">cream</use> to butter.</step>)")) == "");
  const std::string drawn = R"(<step do="churn">Churn and draw at <food-temp>-18 °C</food-temp>.</step>)";
  CHECK(said(check_part(drawn.c_str())) == "churned-out-of-balance: an ice is drawn from the machine at -6 to -4 °C, not at -18 °C");
}

TEST_CASE("brine by the weight of its water, where it is called one") {
  const auto brine = [](const char* salt, const char* word) {
    return R"(<ingredient id="w" food="water">1 l</ingredient><ingredient id="s" food="salt">)" + std::string(salt) +
           R"(</ingredient><step do="boil">Boil the <use of="w">water</use> and <use of="s">salt</use> to a )" + word + ".</step>";
  };
  CHECK(said(check_part(brine("60 g", "brine"))) == "");
  CHECK(said(check_part(brine("300 g", "brine"))) ==
        "brine-out-of-strength: the brine has 30 % of salt by the weight of its water: nothing in it can be eaten unsoaked");
  CHECK(said(check_part(brine("8 g", "brine"))) ==
        "brine-out-of-strength: the brine has 0.8 % of salt by the weight of its water: it seasons little and keeps nothing");
  CHECK(said(check_part(brine("8 g", "boil for the pasta"))) == "");
  CHECK(said(check_part(brine("12 g", "brine, reckoned to equilibrium with the meat"))) == "");
  CHECK(said(check_part(brine("8 g", "court-bouillon for the lake trout"))) == "");
}

TEST_CASE("a kitchen may say how loud a rule of the trade is") {
  const std::string text = R"(<kitchen xmlns="urn:tamis:fiche:1" name="K"><rule id="frying-fat-too-hot" severity="off"/></kitchen>)";
  const fiche::Kitchen quiet = fiche::read_kitchen(format::read(std::make_shared<const base::Source>("kitchen.xml", text)).document);
  const std::string part = R"(<ingredient id="p" food="potato">1 kg</ingredient><step>Fry the <use of="p">chips</use> at <medium-temp of="oil">240 °C</medium-temp>.</step>)";
  CHECK(said(check_part(part.c_str(), quiet)) == "");
}
