// Temperatures and proportions at which egg, foam, gelatine and chocolate meet each other. What is right stands here in as many
// ways as kitchens write it; what is wrong beside the same, one figure away.

#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;

// Each of these was, or could have been, a false alarm.
TEST_CASE("mixes that are meant raise nothing") {
  const char* part = GENERATE(
      // Boiled milk or cream onto yolks, in one sentence and in two steps, little sugar and much.
      R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="y" food="egg-yolk">120 g</ingredient>
         <ingredient id="s" food="sugar-white">100 g</ingredient>
         <step do="boil" on="hob" makes="hot">Boil the <use of="m">milk</use>.</step>
         <step do="whisk" makes="pale">Whisk the <use of="y">yolks</use> and <use of="s">sugar</use> pale.</step>
         <step do="pour" makes="mix">Pour the boiling <use of="hot" at="100 °C">milk</use> onto the <use of="pale">yolks</use>, whisking.</step>
         <step do="cook" on="hob">Stir the <use of="mix">custard</use> to <food-temp>84 °C</food-temp>.</step>)",
      R"(<ingredient id="m" food="cream-35" at="100 °C">600 g</ingredient><ingredient id="y" food="egg-yolk" at="20 °C">100 g</ingredient>
         <step do="pour">Pour the <use of="m">cream</use> onto the <use of="y">yolks</use>.</step>)",
      // Butter melted hot onto beaten egg: the mix stays cool.
      R"(<ingredient id="e" food="egg-whole" at="40 °C">300 g</ingredient><ingredient id="b" food="butter-unsalted" prep="melted" at="90 °C">80 g</ingredient>
         <ingredient id="f" food="flour-wheat-white">200 g</ingredient>
         <step do="whisk" makes="foam">Whisk the <use of="e">eggs</use> to the ribbon.</step>
         <step do="fold">Fold in the <use of="f">flour</use>, then the <use of="b">butter</use>.</step>)",
      // Syrup onto yolks that whip, and onto whites.
      R"(<ingredient id="y" food="egg-yolk" at="20 °C">100 g</ingredient><ingredient id="s" food="sugar-white">150 g</ingredient><ingredient id="w" food="water">50 g</ingredient>
         <step do="boil" on="hob" makes="syrup">Boil the <use of="s">sugar</use> and <use of="w">water</use> to <food-temp>118 °C</food-temp>.</step>
         <step do="whip">Whip the <use of="y">yolks</use>, streaming in the <use of="syrup">syrup</use>.</step>)",
      // Starch holds egg smooth: potato, choux, velouté, and egg that is poured into broth to set.
      R"(<ingredient id="p" food="potato" prep="boiled, riced" at="80 °C">1 kg</ingredient><ingredient id="y" food="egg-yolk" at="20 °C">80 g</ingredient>
         <step do="mix">Beat the <use of="y">yolks</use> into the hot <use of="p">potato</use>.</step>)",
      R"(<ingredient id="w" food="water">250 g</ingredient><ingredient id="b" food="butter-unsalted">100 g</ingredient><ingredient id="f" food="flour-wheat-white">150 g</ingredient>
         <ingredient id="e" food="egg-whole">250 g</ingredient>
         <step do="boil" on="hob" makes="panade">Boil the <use of="w">water</use> and <use of="b">butter</use>, add the <use of="f">flour</use> and dry it to <food-temp>85 °C</food-temp>.</step>
         <step do="beat">Beat the <use of="e">eggs</use> one by one into the <use of="panade">panade</use>.</step>)",
      R"(<ingredient id="k" food="stock-chicken">1 l</ingredient><ingredient id="e" food="egg-whole">150 g</ingredient>
         <step do="boil" on="hob" makes="hot">Boil the <use of="k">stock</use>.</step>
         <step do="poach" on="hob">Stir the <use of="e">eggs</use> into the boiling <use of="hot">stock</use>, and they set in threads.</step>)",
      R"(<ingredient id="k" food="stock-chicken" at="98 °C">1 l</ingredient><ingredient id="e" food="egg-whole">150 g</ingredient>
         <step do="whisk">Whisk the <use of="e">eggs</use> into the hot <use of="k">stock</use>.</step>)",
      R"(<ingredient id="k" food="stock-chicken" at="80 °C">3 l</ingredient><ingredient id="e" food="egg-white">150 g</ingredient>
         <step do="clarify" on="hob">Stir the <use of="e">whites</use> into the <use of="k">stock</use>.</step>)",
      // A curd that is brought to the boil, an American custard at 160 °F, one that is pasteurised, a sabayon.
      R"(<ingredient id="l" food="lemon-juice">200 g</ingredient><ingredient id="s" food="sugar-white">200 g</ingredient><ingredient id="e" food="egg-whole">200 g</ingredient>
         <step do="cook" on="hob">Stir the <use of="l">juice</use>, <use of="s">sugar</use> and <use of="e">eggs</use> to <food-temp>98 °C</food-temp>.</step>)",
      R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="e" food="egg-whole">150 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
         <step do="cook" on="hob">Stir the <use of="m">milk</use>, <use of="e">eggs</use> and <use of="s">sugar</use> to <food-temp>160 °F</food-temp>.</step>)",
      R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="e" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
         <step do="pasteurise" on="hob">Hold the <use of="m">milk</use>, <use of="e">yolks</use> and <use of="s">sugar</use> at <food-temp for="30 min">65 °C</food-temp>.</step>)",
      R"(<ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient><ingredient id="w" food="wine-white">100 g</ingredient>
         <step do="whisk" on="hob">Whisk the <use of="y">yolks</use>, <use of="s">sugar</use> and <use of="w">wine</use> over a bath to <food-temp>68 °C</food-temp>.</step>)",
      R"(<ingredient id="m" food="cream-35">500 g</ingredient><ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
         <step do="mix" makes="mix">Stir the <use of="m">cream</use>, <use of="y">yolks</use> and <use of="s">sugar</use>.</step>
         <step do="bake" on="oven">Bake the <use of="mix">mix</use> <length>2 cm</length> deep at <oven-temp mode="fan">95 °C</oven-temp> for
         <time>40 to 50 min</time> to <food-temp place="core">80–83 °C</food-temp>.</step>)",
      R"(<ingredient id="m" food="cheese-cream">500 g</ingredient><ingredient id="c" food="cream-35">200 g</ingredient><ingredient id="e" food="egg-whole">150 g</ingredient>
         <step do="mix" makes="mix">Stir the <use of="m">cheese</use>, <use of="c">cream</use> and <use of="e">eggs</use>.</step>
         <step do="bake" on="oven">Bake the <use of="mix">mix</use> <length>4 cm</length> deep at <oven-temp mode="fan">100 °C</oven-temp> for
         <time>60 to 70 min</time> to <food-temp place="core">65 °C</food-temp>.</step>)",
      // A custard with starch boils; a milk pudding without egg need not.
      R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="y" food="egg-yolk">80 g</ingredient><ingredient id="f" food="flour-wheat-white">40 g</ingredient>
         <step do="boil" on="hob">Whisk the <use of="m">milk</use>, <use of="y">yolks</use> and <use of="f">flour</use> to the boil, <food-temp>98 °C</food-temp>.</step>)",
      R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="f" food="starch-maize">40 g</ingredient>
         <step do="cook" on="hob">Whisk the <use of="m">milk</use> and <use of="f">starch</use> to <food-temp>85 °C</food-temp>.</step>)",
      // Chocolate at 45 and 50 °C onto beaten egg; hot onto egg that is not beaten, for a brownie.
      R"(<ingredient id="c" food="chocolate-dark-60" prep="melted" at="45–50 °C">250 g</ingredient><ingredient id="e" food="egg-whole">250 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient>
         <step do="whisk" makes="foam">Whisk the <use of="e">eggs</use> and <use of="s">sugar</use> to the ribbon.</step>
         <step do="fold">Fold the <use of="c">chocolate</use> into the <use of="foam">foam</use>.</step>)",
      R"(<ingredient id="c" food="chocolate-dark-60" prep="melted" at="60 °C">250 g</ingredient><ingredient id="e" food="egg-whole">250 g</ingredient>
         <step do="stir">Stir the <use of="e">eggs</use> into the <use of="c">chocolate</use>.</step>)",
      // Soufflé: beaten white into a hot base without chocolate or gelatine. A sauce with whipped cream in it.
      R"(<ingredient id="w" food="egg-white">150 g</ingredient><ingredient id="b" food="milk-whole" at="60 °C">300 g</ingredient><ingredient id="f" food="flour-wheat-white">40 g</ingredient>
         <step do="whip" makes="foam">Whip the <use of="w">whites</use>.</step><step do="mix" makes="base">Mix the <use of="b">milk</use> and <use of="f">flour</use>.</step>
         <step do="fold">Fold the <use of="foam">whites</use> into the <use of="base" at="60 °C">base</use>.</step>)",
      R"(<ingredient id="k" food="stock-chicken">500 g</ingredient><ingredient id="f" food="flour-wheat-white">30 g</ingredient><ingredient id="r" food="cream-35">100 g</ingredient>
         <step do="boil" on="hob" makes="p">Whisk the <use of="k">stock</use> and <use of="f">flour</use> to the boil.</step>
         <step do="fold">Fold the whipped <use of="r">cream</use> into the hot <use of="p" at="80 °C">soup</use>.</step>)",
      // Gelatine: just-boiled cream off the heat; brought to the boil; mass; powder sprinkled over cold milk; French words.
      R"(<ingredient id="c" food="cream-35">500 g</ingredient><ingredient id="g" food="gelatine-leaf" prep="soaked, wrung out">5 g</ingredient>
         <step do="boil" on="hob">Boil the <use of="c">cream</use> for <time>3 min</time>, take it off and stir in the <use of="g">gelatine</use>.</step>)",
      R"(<ingredient id="c" food="apple-juice">500 g</ingredient><ingredient id="g" food="gelatine-mass">50 g</ingredient>
         <step do="boil" on="hob">Bring the <use of="c">juice</use> and <use of="g">gelatine</use> to the boil, and strain.</step>)",
      R"(<ingredient id="c" food="milk-whole" at="4 °C">500 g</ingredient><ingredient id="g" food="gelatine-powder">6 g</ingredient>
         <step do="stir" makes="a">Stir the <use of="g">gelatine</use> into the cold <use of="c">milk</use>.</step>
         <step do="heat" on="hob">Heat the <use of="a">milk</use> to <food-temp>60 °C</food-temp>.</step>)",
      R"(<ingredient id="c" food="cream-35">500 g</ingredient><ingredient id="g" food="gelatine-leaf">5 g</ingredient>
         <step do="boil" on="hob" makes="a">Porter la <use of="c">crème</use> à ébullition.</step>
         <step do="mix">Ajouter la <use of="g">gélatine</use> ramollie à l'eau froide et essorée dans la <use of="a">crème</use>.</step>)",
      R"(<ingredient id="p" food="apple-juice">500 g</ingredient><ingredient id="g" food="gelatine-leaf">8 g</ingredient>
         <step do="soak boil">Hidratar la <use of="g">gelatina</use> en agua fría. Hervir el <use of="p">zumo</use> <time>5 min</time> y añadirla.</step>)",
      // Melted gelatine into something cold; a stabilised whipped cream; marshmallow.
      R"(<ingredient id="c" food="cheese-mascarpone" at="6 °C">500 g</ingredient><ingredient id="g" food="gelatine-leaf" prep="soaked, wrung out">6 g</ingredient>
         <step do="mix">Melt the <use of="g">gelatine</use>, loosen it with a spoonful and stir into the <use of="c">mascarpone</use>.</step>)",
      R"(<ingredient id="c" food="cream-35">500 g</ingredient><ingredient id="g" food="gelatine-mass" prep="melted">6 g</ingredient>
         <step do="whip">Whip the <use of="c">cream</use> with the <use of="g">gelatine</use>.</step>)",
      R"(<ingredient id="s" food="sugar-white">300 g</ingredient><ingredient id="w" food="water">90 g</ingredient><ingredient id="e" food="egg-white">60 g</ingredient><ingredient id="g" food="gelatine-leaf" prep="soaked, wrung out">20 g</ingredient>
         <step do="boil" on="hob" makes="syrup">Boil the <use of="s">sugar</use> and <use of="w">water</use> to <food-temp>125 °C</food-temp>.</step>
         <step do="whip">Dissolve the <use of="g">gelatine</use> in the <use of="syrup">syrup</use> and pour it onto the whipped <use of="e">whites</use>.</step>)",
      // Pineapple that was poached, tinned, boiled here, or lies on top.
      R"(<ingredient id="p" food="pineapple" name="tinned pineapple">300 g</ingredient><ingredient id="j" food="apple-juice" at="60 °C">500 g</ingredient><ingredient id="g" food="gelatine-mass">60 g</ingredient>
         <step do="mix">Dissolve the <use of="g">gelatine</use> in the <use of="j">juice</use>, add the <use of="p">pineapple</use>.</step>)",
      R"(<ingredient id="p" food="pineapple">300 g</ingredient><ingredient id="j" food="apple-juice" at="60 °C">500 g</ingredient><ingredient id="g" food="gelatine-mass">60 g</ingredient>
         <step do="boil" on="hob" makes="fruit">Boil the <use of="p">pineapple</use> for <time>2 min</time>.</step>
         <step do="mix">Dissolve the <use of="g">gelatine</use> in the <use of="j">juice</use>, add the <use of="fruit">pineapple</use>.</step>)",
      R"(<ingredient id="k" food="kiwi">100 g</ingredient><ingredient id="m" food="milk-whole" at="70 °C">500 g</ingredient><ingredient id="g" food="gelatine-mass">36 g</ingredient>
         <step do="dissolve chill" makes="set">Dissolve the <use of="g">gelatine</use> in the <use of="m">milk</use>, pour and chill to <food-temp>4 °C</food-temp>.</step>
         <step do="garnish">Lay the <use of="k">kiwi</use> on the <use of="set">cream</use>.</step>)",
      R"(<ingredient id="k" food="kiwi">300 g</ingredient><ingredient id="a" food="agar">4 g</ingredient>
         <step do="mix">Stir the <use of="a">agar</use> into the <use of="k">kiwi</use>.</step>)",
      // Tempering: seeded, by one figure, in three steps.
      R"(<ingredient id="c" food="chocolate-dark-70">500 g</ingredient>
         <step do="temper">Melt the <use of="c">chocolate</use> to <food-temp>50–55 °C</food-temp> and seed it down to <food-temp>31.5 °C</food-temp>.</step>)",
      R"(<ingredient id="c" food="chocolate-milk">500 g</ingredient><step do="temper">Temper the <use of="c">chocolate</use> at <food-temp>30 °C</food-temp>.</step>)",
      R"(<ingredient id="c" food="chocolate-white">500 g</ingredient>
         <step do="temper">Melt the <use of="c">chocolate</use> to <food-temp>45 °C</food-temp>, cool to <food-temp>26 °C</food-temp>, warm to <food-temp>28 °C</food-temp>.</step>)",
      R"(<ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="m" food="milk-whole">300 g</ingredient>
         <step do="temper">Temper the <use of="y">yolks</use> with the <use of="m">milk</use> at <food-temp>60 °C</food-temp>.</step>)",
      // Siphon: lean, and warm. Milk and single cream whisked together for a batter.
      R"(<ingredient id="c" food="cream-single" at="55 °C">500 g</ingredient>
         <step do="foam">Fill the <use of="c">cream</use> into the siphon and foam it.</step>)",
      R"(<ingredient id="c" food="cream-single">300 g</ingredient><ingredient id="m" food="milk-whole">300 g</ingredient>
         <step do="whisk">Whisk the <use of="c">cream</use> and <use of="m">milk</use> together.</step>)",
      // Meringues: Swiss at 50 °C, Italian at 121, an unnamed white with hardly any sugar.
      R"(<ingredient id="w" food="egg-white">100 g</ingredient><ingredient id="s" food="sugar-white">200 g</ingredient>
         <step do="whisk" on="hob">For the Swiss meringue whisk the <use of="w">whites</use> and <use of="s">sugar</use> over a bath to <food-temp>50 °C</food-temp>.</step>)",
      R"(<ingredient id="w" food="egg-white">100 g</ingredient><ingredient id="s" food="sugar-white">20 g</ingredient>
         <step do="whip">Whip the <use of="w">whites</use> with the <use of="s">sugar</use>.</step>)",
      // Ganache, three to one of dark, and one to whip.
      R"(<ingredient id="c" food="chocolate-dark-60">300 g</ingredient><ingredient id="r" food="cream-35">150 g</ingredient>
         <step do="melt" on="hob">For the ganache melt the <use of="c">chocolate</use> in the <use of="r">cream</use>.</step>)",
      R"(<ingredient id="c" food="chocolate-white">150 g</ingredient><ingredient id="r" food="cream-35">400 g</ingredient>
         <step do="melt" on="hob">For the ganache melt the <use of="c">chocolate</use> in the <use of="r">cream</use>.</step>)",
      R"(<ingredient id="c" food="chocolate-white">150 g</ingredient><ingredient id="r" food="cream-35">400 g</ingredient>
         <step do="melt" on="hob" makes="g">Melt the <use of="c">chocolate</use> in the <use of="r">cream</use> at <food-temp>60 °C</food-temp>.</step>
         <step do="chill whip">Chill the <use of="g">ganache</use> for <time>12 h</time>. Whip to soft peaks.</step>)",
      // Chilled, and nothing says how long; hands-on time is not how long it stands.
      R"(<ingredient id="c" food="chocolate-white">150 g</ingredient><ingredient id="r" food="cream-35">400 g</ingredient>
         <step do="melt" on="hob" makes="g">Melt the <use of="c">chocolate</use> in the <use of="r">cream</use> at <food-temp>60 °C</food-temp>.</step>
         <step do="chill" makes="k" hands="2 min">Chill the <use of="g">ganache</use>.</step><step do="whip">Whip the <use of="k">ganache</use> to soft peaks.</step>)",
      // The milk is hot, not the custard; a chocolate soufflé is folded hot and baked at once.
      R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
         <step do="whisk pour">Whisk the <use of="y">yolks</use> and <use of="s">sugar</use>, pour in the <use of="m">milk</use> at <food-temp>92 °C</food-temp>.</step>)",
      R"(<ingredient id="c" food="chocolate-dark-70" prep="melted" at="60 °C">200 g</ingredient><ingredient id="y" food="egg-yolk">60 g</ingredient><ingredient id="w" food="egg-white">150 g</ingredient>
         <step do="mix" makes="base">Stir the <use of="y">yolks</use> into the <use of="c">chocolate</use>.</step><step do="whip" makes="foam">Whip the <use of="w">whites</use>.</step>
         <step do="fold" makes="mix">Fold the <use of="foam">whites</use> into the <use of="base" at="58 °C">base</use>.</step>
         <step do="bake" on="oven">Bake the <use of="mix">soufflés</use> <length>5 cm</length> deep at <oven-temp mode="fan">190 °C</oven-temp> for <time>10 to 12 min</time>.</step>)",
      // A warm glaze on a frozen cake; a jelly at 30 °C on a set cream.
      R"(<ingredient id="m" food="milk-whole" at="70 °C">500 g</ingredient><ingredient id="g" food="gelatine-mass">36 g</ingredient><ingredient id="n" food="nappage">300 g</ingredient>
         <step do="dissolve freeze" makes="cake">Dissolve the <use of="g">gelatine</use> in the <use of="m">milk</use> and freeze to <food-temp>−18 °C</food-temp>.</step>
         <step do="heat" on="hob" makes="glaze">Heat the <use of="n">glaze</use> to <food-temp>70 °C</food-temp>.</step>
         <step do="glaze">Pour the <use of="glaze">glaze</use> over the <use of="cake">cake</use>.</step>)");
  CAPTURE(part);
  CHECK(check_part(part).lines() == "");
}

namespace {

struct Row {
  const char* part;
  const char* finding;  ///< "rule: message", without the place
};

std::string said(const tests::Checked& checked) {
  std::string out;
  for (const base::Finding& finding : checked.findings) out += (out.empty() ? "" : "\n") + finding.rule + ": " + finding.message;
  return out;
}

}  // namespace

// The same mixes, each with one thing amiss: what is silent above is worth something only where this is heard.
TEST_CASE("mixes with one figure wrong are said with the figure") {
  const Row row = GENERATE(values<Row>({
      {R"(<ingredient id="y" food="egg-yolk" at="20 °C">150 g</ingredient><ingredient id="b" food="butter-clarified" at="98 °C">700 g</ingredient>
          <step do="whisk">Whisk the <use of="b">butter</use> into the <use of="y">yolks</use> in a thin stream.</step>)",
       "egg-met-too-hot: with the butter at 98 °C the mix comes to 79 °C; egg yolk sets at 70 °C"},
      {R"(<ingredient id="e" food="egg-white" at="20 °C">150 g</ingredient><ingredient id="p" food="water" at="95 °C">600 g</ingredient>
          <step do="pour">Pour the <use of="p">water</use> onto the <use of="e">whites</use>.</step>)",
       "egg-met-too-hot: with the water at 95 °C the mix comes to 81 °C; egg white begins to set at 63 °C"},
      {R"(<ingredient id="l" food="lemon-juice">200 g</ingredient><ingredient id="s" food="sugar-white">200 g</ingredient><ingredient id="e" food="egg-whole">200 g</ingredient>
          <step do="cook" on="hob">Stir the <use of="l">juice</use>, <use of="s">sugar</use> and <use of="e">eggs</use> to <food-temp>65 °C</food-temp>.</step>)",
       "egg-off-its-heat: a curd cooks at 76–90 °C and has not begun to thicken at 65 °C"},
      {R"(<ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient><ingredient id="w" food="wine-white">100 g</ingredient>
          <step do="whisk" on="hob">Whisk the <use of="y">yolks</use>, <use of="s">sugar</use> and <use of="w">wine</use> over a bath to <food-temp>96 °C</food-temp>.</step>)",
       "egg-off-its-heat: egg with sugar grains above 86 °C, and this takes it to 96 °C"},
      {R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="y" food="egg-yolk">80 g</ingredient><ingredient id="f" food="flour-wheat-white">40 g</ingredient>
          <step do="cook" on="hob">Whisk the <use of="m">milk</use>, <use of="y">yolks</use> and <use of="f">flour</use> to <food-temp>82 °C</food-temp>.</step>)",
       "pastry-cream-not-boiled: egg and starch together must boil, and this stops at 82 °C: the yolk's amylase thins the cream again"},
      {R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
          <step do="cook" on="hob">Stir the <use of="m">milk</use>, <use of="y">yolks</use> and <use of="s">sugar</use> to <food-temp>198–200 °F</food-temp>.</step>)",
       "egg-off-its-heat: a custard without starch curdles above 85 °C, and this takes it to 198–200 °F (92–93 °C)"},
      {R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="e" food="egg-whole">200 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
          <step do="mix" makes="mix">Stir the <use of="m">milk</use>, <use of="e">eggs</use> and <use of="s">sugar</use>.</step>
          <step do="bake" on="oven">Bake the <use of="mix">mix</use> <length>4 cm</length> deep at <oven-temp mode="fan">95 °C</oven-temp> for
          <time>40 to 50 min</time> to <food-temp place="core">62 °C</food-temp>.</step>)",
       "baked-custard-off-its-heat: a baked custard is set at 72–88 °C inside, and this says 62 °C: it runs"},
      {R"(<ingredient id="k" food="kiwi" prep="puréed">300 g</ingredient><ingredient id="g" food="gelatine-mass" prep="melted">40 g</ingredient>
          <step do="mix">Stir the <use of="g">gelatine</use> into the <use of="k">kiwi</use>.</step>)",
       "enzyme-fruit-with-gelatine: raw kiwi fruit takes gelatine apart: it will not set"},
      {R"(<ingredient id="leaf" food="gelatine-leaf" name="gelatine">5 leaves</ingredient>)",
       "gelatine-leaf-without-weight: leaves of gelatine by number, and nothing says how heavy or how strong: a leaf weighs 1.7 g (platinum) to 3.3 g (bronze)"},
      {R"(<ingredient id="w" food="egg-white">100 g</ingredient><ingredient id="s" food="sugar-white">200 g</ingredient>
          <step do="whisk" on="hob">For the Swiss meringue whisk the <use of="w">whites</use> and <use of="s">sugar</use> over a bath to <food-temp>85 °C</food-temp>.</step>)",
       "meringue-off-its-heat: for a Swiss meringue white and sugar are warmed to 60–71 °C, and this says 85 °C"},
      {R"(<ingredient id="c" food="cream-35">500 g</ingredient><ingredient id="g" food="gelatine-leaf">5 g</ingredient>
          <step do="boil" on="hob" makes="a">Porter la <use of="c">crème</use> à ébullition.</step>
          <step do="mix">Ajouter la <use of="g">gélatine</use> dans la <use of="a">crème</use>.</step>)",
       "gelatine-not-soaked: the gelatine goes in dry: nothing soaks it first"},
      {R"(<ingredient id="c" food="cheese-mascarpone" at="6 °C">500 g</ingredient><ingredient id="g" food="gelatine-leaf" prep="soaked, wrung out">6 g</ingredient>
          <step do="mix">Stir the <use of="g">gelatine</use> into the <use of="c">mascarpone</use>.</step>)",
       "gelatine-not-dissolved: soaked gelatine dissolves at 50–60 °C, and what it goes into is at 6 °C at the most"},
      {R"(<ingredient id="k" food="kiwi">100 g</ingredient><ingredient id="m" food="apple-juice" at="60 °C">500 g</ingredient><ingredient id="g" food="gelatine-mass">60 g</ingredient>
          <step do="mix">Dissolve the <use of="g">gelatine</use> in the <use of="m">juice</use>, add the <use of="k">kiwi</use>.</step>)",
       "enzyme-fruit-with-gelatine: raw kiwi fruit takes gelatine apart: it will not set"},
      {R"(<ingredient id="c" food="chocolate-milk">500 g</ingredient><step do="temper">Temper the <use of="c">chocolate</use> at <food-temp>33 °C</food-temp>.</step>)",
       "temper-off-its-curve: milk chocolate is worked at 29–30 °C, and this says 33 °C: the crystals melt again, and it sets dull"},
      {R"(<ingredient id="c" food="chocolate-white">150 g</ingredient><ingredient id="r" food="cream-35">400 g</ingredient>
          <step do="melt" on="hob" makes="g">Melt the <use of="c">chocolate</use> in the <use of="r">cream</use> at <food-temp>60 °C</food-temp>.</step>
          <step do="chill whip">Chill the <use of="g">ganache</use> for <time>1 h</time>. Whip to soft peaks.</step>)",
       "ganache-whipped-warm: a ganache rests cold for 4–24 h before it is whipped; this has 60 min"},
      {R"(<ingredient id="c" food="milk-whole" at="60 °C">500 g</ingredient><ingredient id="g" food="gelatine-mass">40 g</ingredient><ingredient id="r" food="cream-35">400 g</ingredient>
          <step do="dissolve">Dissolve the <use of="g">gelatine</use> in the <use of="c">milk</use>.</step>
          <step do="cool fold">Cool to <food-temp>48 °C</food-temp>, fold in the whipped <use of="r">cream</use>.</step>)",
       "base-off-its-folding-heat: a base with gelatine is folded near setting, at 20–30 °C; what it goes into is at 48 °C: it melts the foam, and the gelatine sinks before it sets"},
      {R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="y" food="egg-yolk">100 g</ingredient><ingredient id="s" food="sugar-white">80 g</ingredient>
          <step do="whisk stir">Whisk the <use of="y">yolks</use> and <use of="s">sugar</use>, add the hot <use of="m">milk</use> and stir to <food-temp>91 °C</food-temp>.</step>)",
       "egg-off-its-heat: a custard without starch curdles above 85 °C, and this takes it to 91 °C"},
      {R"(<ingredient id="m" food="milk-whole">500 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient><ingredient id="f" food="starch-maize">45 g</ingredient>
          <ingredient id="r" food="cream-35">300 g</ingredient>
          <step do="boil" on="hob" makes="p">Whisk the <use of="m">milk</use>, <use of="s">sugar</use> and <use of="f">starch</use> to the boil.</step>
          <step do="fold">Fold the whipped <use of="r">cream</use> into the <use of="p" at="55 °C">cream</use>.</step>)",
       "base-off-its-folding-heat: whipped cream is folded into a pastry cream at 5–25 °C; the cream is at 55 °C: it melts the cream"},
      {R"(<ingredient id="c" food="cream-single">500 g</ingredient><step do="whisk">Whisk the <use of="c">cream</use> to stiff peaks.</step>)",
       "cream-too-lean-to-whip: cream that is to stand needs 30 % fat; this has 19 %"},
      {R"(<ingredient id="c" food="chocolate-dark-60" prep="melted" at="70 °C">300 g</ingredient><ingredient id="r" food="cream-35">400 g</ingredient>
          <step do="whip fold">Whip the <use of="r">cream</use> and fold it into the <use of="c">chocolate</use>.</step>)",
       "base-off-its-folding-heat: a chocolate base is folded at 35–45 °C; the chocolate is at 70 °C: it melts the foam"},
  }));
  CAPTURE(row.part);
  CHECK(said(check_part(row.part)) == row.finding);
}
