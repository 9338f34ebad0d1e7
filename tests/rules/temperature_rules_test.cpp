#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;

namespace {

std::string said(const tests::Checked& checked) {
  std::string out;
  for (const base::Finding& finding : checked.findings) {
    const rules::Rule* rule = rules::rule_by_id(finding.rule);
    if (rule == nullptr || (rule->topic != "order" && rule->topic != "temperature")) continue;
    out += (out.empty() ? "" : "\n") + finding.rule + ": " + finding.message;
  }
  return out;
}

fiche::Kitchen kitchen_at(const char* altitude) {
  const std::string text = "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\" altitude=\"" + std::string(altitude) + "\"/>";
  return fiche::read_kitchen(format::read(std::make_shared<const base::Source>("kitchen.xml", text)).document);
}

}  // namespace

TEST_CASE("temperatures as stated: what is said, and what is let be") {
  struct Row {
    const char* part;
    const char* expected;
  };
  const Row rows[] = {
      // Food and its oven.
      {R"(<step>Bake the terrine in an oven at <oven-temp mode="fan">70 °C</oven-temp> until the core is at <food-temp place="core">72.5 °C</food-temp>.</step>)",
       "food-hotter-than-oven: the food is to come to 72.5 °C in an oven at 70 °C"},
      {R"(<step>Bake to <food-temp place="core">96 °C</food-temp> in an oven at <oven-temp mode="fan">90 °C</oven-temp>.</step>)",
       "food-hotter-than-oven: the food is to come to 96 °C in an oven at 90 °C"},
      {R"(<step>Bake at <oven-temp mode="fan">250 °C</oven-temp>, then at <oven-temp mode="fan">90 °C</oven-temp> until the core is at <food-temp place="core">96 °C</food-temp>.</step>)", ""},
      {R"(<step>Keep the plates in an oven at <oven-temp mode="static">60 °C</oven-temp>. Fry the fish to a core of <food-temp place="core">63 °C</food-temp>.</step>)", ""},
      {R"(<step>Cook to <food-temp>82 °C</food-temp>, pour into moulds and bake at <oven-temp mode="fan">80 °C</oven-temp>.</step>)", ""},
      {R"(<step>Warm the nuts at <oven-temp mode="fan">100 °C</oven-temp> while the syrup boils to <food-temp>121 °C</food-temp>.</step>)", ""},
      // Food and its medium.
      {R"(<step>Poach at <medium-temp of="water bath">140 °F</medium-temp> until the core is at <food-temp place="core">145 °F</food-temp>.</step>)",
       "food-beyond-its-medium: the food is to come to 145 °F, and the water bath is at 140 °F"},
      {R"(<step>Freeze at <medium-temp of="freezer">-18 °C</medium-temp> to a core of <food-temp place="core">-20 °C</food-temp>.</step>)",
       "food-beyond-its-medium: the food is to come to -20 °C, and the freezer is at -18 °C"},
      {R"(<step>Freeze at <medium-temp of="freezer">-18 °C</medium-temp> to a core of <food-temp place="core">-15 °C</food-temp>.</step>)", ""},
      {R"(<step>Cool the caramel in a bath at <medium-temp of="water bath">60 °C</medium-temp> to <food-temp>90 °C</food-temp>.</step>)", ""},
      {R"(<step>Chill in <medium-temp of="ice bath">0–2 °C</medium-temp> to <food-temp>4 °C</food-temp>.</step>)", ""},
      // The step's own control.
      {R"(<step>Cook to <food-temp place="core">60 °C</food-temp>.<control hazard="survival" check="probe" often="each" who="cook" action="cook on">The core is at <food-temp place="core">74 °C or higher</food-temp>.</control></step>)",
       "control-against-its-step: the control point asks for 74 °C or higher, and the step itself goes to 60 °C"},
      {R"(<step>Chill to <food-temp>8 °C</food-temp>.<control hazard="growth" check="probe" often="each" who="cook" action="throw away">At most <food-temp>5 °C</food-temp>.</control></step>)",
       "control-against-its-step: the control point asks for at most 5 °C, and the step itself goes to 8 °C"},
      {R"(<step>Roast to <food-temp place="core">52 °C</food-temp> and let it rest.<control hazard="survival" check="probe" often="each" who="cook" action="roast on">At least <food-temp place="core">56 °C</food-temp>.</control></step>)", ""},
      {R"(<step>Cook to <food-temp>82 °C</food-temp>.<control hazard="growth" check="probe" often="hourly" who="cook" action="heat again">Hold hot at <food-temp>at least 63 °C</food-temp>.</control></step>)", ""},
      // Cold places.
      {R"(<keep where="fridge" at="-18 °C" for="2 days"/>)", "cold-place-against-figure: -18 °C is no fridge's temperature"},
      {R"(<keep where="freezer" at="4 °C" for="2 weeks"/>)", "cold-place-against-figure: 4 °C is no freezer's temperature"},
      {R"(<keep where="freezer, then 4 h in the fridge" at="-18 °C" for="2 weeks"/>)", ""},
      {R"(<keep where="freezer" at="at most -15 °C" for="2 weeks"/>)", ""},
      {R"(<keep where="dry store" at="18 °C" for="2 weeks"/>)", ""},
      {R"(<step on="freezer">Freeze at <medium-temp>18 °C</medium-temp>.</step>)",
       "cold-place-against-figure: 18 °C is no freezer's temperature"},
      {R"(<step do="proof chill" on="fridge">Prove at <medium-temp>27 °C</medium-temp>, then chill.</step>)", ""},
      {R"(<step on="fridge">Set over ice at <medium-temp of="salted ice">-8 °C</medium-temp>.</step>)", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(said(check_part(row.part)) == row.expected);
  }
}

TEST_CASE("a gate is held against what the step before states, unless something or someone cools it") {
  const auto after = [](const char* first, const char* second) {
    return said(check_part("<step makes=\"custard\">" + std::string(first) + "</step><step>" + second + "</step>"));
  };
  const char* hot = R"(Stir to <food-temp>82–84 °C</food-temp>, <until>until it coats the spoon</until>.)";
  const char* gate = R"(Fold the cream into the <use of="custard" at="at most 38 °C">custard</use>.)";
  CHECK(after(hot, gate) ==
        "gate-against-step-before: this asks for at most 38 °C, and \"Stir to 82–84 °C, until it coats …\" leaves it at 82–84 °C; "
        "nothing between cools it");
  CHECK(after(hot, R"(Fold the cream into the <use of="custard">custard</use>.<gate of="custard">At <food-temp of="custard">24–30 °C</food-temp>.</gate>)") ==
        "gate-against-step-before: this asks for 24–30 °C, and \"Stir to 82–84 °C, until it coats …\" leaves it at 82–84 °C; "
        "nothing between cools it");
  CHECK(after("Stir to <food-temp>20 °C</food-temp>.", R"(Pour the <use of="custard" at="at least 80 °C">custard</use> over.)") ==
        "gate-against-step-before: this asks for at least 80 °C, and \"Stir to 20 °C\" leaves it at 20 °C; nothing between warms it");
  // The step says how, or that it is waited for; something goes in; it is left to stand.
  CHECK(after(hot, R"(When the <use of="custard" at="24–30 °C">custard</use> is cool but not set, fold in the cream.)") == "");
  CHECK(after(hot, R"(Fold the cream into the <use of="custard" at="24–30 °C">custard</use>.<gate of="custard">Cool but not set.</gate>)") == "");
  CHECK(after(R"(Stir to <food-temp>84 °C</food-temp>. Stand it in ice.)", gate) == "");
  CHECK(after(R"(Stir to <food-temp>84 °C</food-temp>, add the cold cream.)", gate) == "");
  CHECK(after(R"(Stir to <food-temp>84 °C</food-temp>, leave <time>30 min</time>.)", gate) == "");
  CHECK(after(R"(Stir to <food-temp>84 °C</food-temp>.)", R"(Pour the <use of="custard" at="80 °C">custard</use> over.)") == "");
  CHECK(after(R"(Stir, never above <food-temp>at most 84 °C</food-temp>.)", gate) == "");
  CHECK(said(check_part(R"(<step makes="custard" unattended="1 h">Stir to <food-temp>84 °C</food-temp>.</step><step>Fold in the <use of="custard" at="at most 38 °C">custard</use>.</step>)")) == "");
  CHECK(said(check_part(R"(<step makes="custard" day="1">Stir to <food-temp>84 °C</food-temp>.</step><step day="2">Fold in the <use of="custard" at="at most 38 °C">custard</use>.</step>)")) == "");
}

TEST_CASE("what boils in water is held against the kitchen's height; what boils hotter is let be") {
  const std::string custard = R"(<ingredient id="milk" food="milk-whole">500 g</ingredient><ingredient id="sugar" food="sugar-white">100 g</ingredient>
<ingredient id="yolks" food="egg-yolk">80 g</ingredient><ingredient id="starch" food="starch-maize">40 g</ingredient>
<step do="boil" on="hob">Boil the <use of="milk">milk</use>, <use of="sugar">sweetened</use>, with the <use of="starch yolks">starch and yolks</use> to <food-temp>98 °C</food-temp>.</step>)";
  CHECK(said(check_part(custard)) == "");
  CHECK(said(check_part(custard, kitchen_at("400 m"))) == "");
  CHECK(said(check_part(custard, kitchen_at("2000 m"))) ==
        "boiling-above-altitude: 98 °C is more than boiling: water boils at 93.3 °C at this kitchen's 2000 m");

  const std::string water = R"(<ingredient id="water" food="water">1 l</ingredient><step>Pour the <use of="water" at="99 °C">water</use> over the leaves.</step>)";
  CHECK(said(check_part(water)) == "");
  CHECK(said(check_part(water, kitchen_at("1500 m"))) ==
        "boiling-above-altitude: 99 °C is more than boiling: water boils at 95 °C at this kitchen's 1500 m");

  const std::string bath = R"(<step>Poach at <medium-temp of="water">106 °C</medium-temp>.</step>)";
  CHECK(said(check_part(bath)) ==
        "boiling-above-altitude: 106 °C is more than boiling: water boils at 100 °C at the sea, and lower further up");

  const char* part = GENERATE(
      R"(<ingredient id="s" food="sugar-white">500 g</ingredient><ingredient id="w" food="water">150 g</ingredient><step do="boil">Boil the <use of="s">sugar</use> and <use of="w">water</use> to <food-temp>121 °C</food-temp>.</step>)",
      R"(<ingredient id="s" food="sugar-white">300 g</ingredient><ingredient id="w" food="water">100 g</ingredient><step do="boil">Boil <use of="s">it</use> with <use of="w">this</use> to <food-temp>105 °C</food-temp>.</step>)",
      R"(<ingredient id="p" food="apple">1 kg</ingredient><ingredient id="s" food="sugar-white">1 kg</ingredient><step do="boil">Boil the <use of="p">fruit</use> with its <use of="s">sweetener</use> to <food-temp>105 °C</food-temp>.</step>)",
      R"(<step>Fry in oil at <medium-temp of="frying oil">180 °C</medium-temp>.</step>)",
      R"(<ingredient id="w" food="water">1 l</ingredient><step do="boil" setting="15 lb pressure">Cook in the <use of="w">water</use> at <food-temp>116 °C</food-temp>.</step>)",
      R"(<step>Boil to <food-temp>116 °C</food-temp>.</step>)");
  CAPTURE(part);
  CHECK(said(check_part(part)) == "");
}

// Right, and wrong to the eye of who does not cook. Each as a kitchen would write it.
TEST_CASE("good techniques that look wrong raise nothing about order or temperature") {
  const char* part = GENERATE(
      // Boiled milk streamed onto raw yolks.
      R"(<step makes="hot-milk">Bring the milk to <food-temp>95 °C</food-temp>.</step><step>Stream the <use of="hot-milk" at="at least 80 °C">milk</use> onto the yolks, whisking, and cook to <food-temp>84 °C</food-temp>.</step>)",
      // Syrup at 121 °C onto whipping whites.
      R"(<step makes="whites">Whip the whites to soft peaks at <food-temp>20 °C</food-temp>.</step><step makes="syrup">Cook the syrup to <food-temp>121 °C</food-temp>.</step><step>Pour the <use of="syrup">syrup</use> onto the <use of="whites">whites</use>.</step>)",
      // Warm glaze on a frozen cake.
      R"(<step makes="cake" on="freezer" unattended="6 h">Freeze the cake.</step><step makes="glaze">Melt the glaze to <food-temp>34 °C</food-temp>.</step><step>Pour the <use of="glaze" at="32–35 °C">glaze</use> over the <use of="cake" at="at most -15 °C">cake</use>.</step>)",
      // The core rises while a roast rests.
      R"(<step makes="roast">Roast at <oven-temp mode="fan">120 °C</oven-temp> to a core of <food-temp place="core">52 °C</food-temp>.</step><step unattended="20 min">Rest the <use of="roast">roast</use> to a core of <food-temp place="core">56 °C</food-temp>.</step>)",
      // A custard baked in a water bath.
      R"(<step>Bake in a bath of <medium-temp of="water bath">80 °C</medium-temp> in the oven at <oven-temp mode="static">150 °C</oven-temp> until the centre is at <food-temp place="core">83 °C</food-temp>.</step>)",
      // Deep frying: the fat is hotter than the food gets.
      R"(<step>Fry at <medium-temp of="frying oil">180 °C</medium-temp> to a core of <food-temp place="core">75 °C</food-temp>.</step>)",
      // Caramel stopped with cream.
      R"(<step makes="caramel">Cook the sugar to a caramel of <food-temp>180 °C</food-temp>.</step><step makes="warm-cream">Warm the cream to <food-temp>60 °C</food-temp>.</step><step>Stop the <use of="caramel">caramel</use> with the <use of="warm-cream" at="60 °C">cream</use> and boil up to <food-temp>104 °C</food-temp>.</step>)",
      // Chocolate: melted hot, cooled by what is stirred in, used warm.
      R"(<step makes="melted">Melt two thirds of the chocolate to <food-temp>48 °C</food-temp>.</step><step makes="tempered">Stir the rest into the <use of="melted">chocolate</use> down to <food-temp>31 °C</food-temp>.</step><step>Coat with the <use of="tempered" at="31–32 °C">chocolate</use>.</step>)",
      // Starter and dough: proving warmer than the dough, cold retarding after.
      R"(<step makes="dough">Knead to a dough of <food-temp>24 °C</food-temp>.</step><step on="fridge" unattended="12 h">Retard the <use of="dough">dough</use> at <medium-temp of="fridge">4 °C</medium-temp>.</step>)",
      // Bread straight onto a deck, core below the oven.
      R"(<step>Bake on <oven-temp mode="deck" top="250 °C" bottom="230 °C">240 °C</oven-temp> to a core of <food-temp place="core">98 °C</food-temp>.</step>)",
      // Salt-crust, sear: the surface is hotter than the oven.
      R"(<step>Sear to <food-temp place="surface">220 °C</food-temp>, then roast at <oven-temp mode="fan">100 °C</oven-temp> to a core of <food-temp place="core">54 °C</food-temp>.</step>)",
      // Eggs in a bath at the very temperature they are to have.
      R"(<step unattended="1 h">Cook in a bath at <medium-temp of="water bath">63 °C</medium-temp> to a core of <food-temp place="core">63 °C</food-temp>.</step>)",
      // An ice bath takes the custard down from 84 to 30.
      R"(<step>Cook to <food-temp>84 °C</food-temp> and cool over <medium-temp of="ice bath">0–2 °C</medium-temp> to <food-temp>30 °C</food-temp>.</step>)",
      // Made, kept and used the same day; the limit is far.
      R"(<step id="cook" makes="filling" hands="10 min">Cook the filling.</step><step hands="20 min" makes="case">Line the tins.</step><step after="cook" at-most="2 h" hands="5 min">Fill the <use of="case">tins</use> with the <use of="filling">filling</use>.</step>)");
  CAPTURE(part);
  CHECK(said(check_part(part)) == "");
}
