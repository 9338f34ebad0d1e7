// Temperatures through the steps. Specific heats are those of Choi and Okos (ASHRAE Handbook Refrigeration 2006, ch. 9,
// table 1): water 4.1289 - 9.0864e-5 t + 5.4731e-6 t², carbohydrate 1.5488 + 1.9625e-3 t - 5.9399e-6 t² kJ/(kg K).
#include "core/flow/ages.h"
#include "tests/flow/stated.h"

namespace tamis {
namespace {

using flow::Range;
using flow::State;
using flow::Why;
using tests::component_of;
using tests::fiche_of;
using tests::is;
using tests::states_of;

constexpr double by_hand = 0.06;  // K: the table's sugar and water hold traces of other things

/// What one step makes of a and b.
State mixed(const std::string& inside) { return states_of(component_of(inside)).named("made"); }

TEST_CASE("what meets comes to the temperature that the heat in it allows", "[states]") {
  // Water at 80 °C: 4.15666, at 20 °C: 4.12927 kJ/(kg K). (4.15666·80 + 4.12927·20) / 8.28593 = 50.10 °C.
  const State halves = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="water">1 kg</ingredient>
      <step do="mix" makes="made">Mix <use of="a" at="80 °C">a</use> and <use of="b" at="20 °C">b</use>.</step>)");
  CHECK(halves.celsius.low == Approx(50.10).margin(by_hand));
  CHECK(halves.celsius.high == Approx(50.10).margin(by_hand));
  CHECK_FALSE(halves.why_celsius.any());
  // Sugar at 20 °C: 1.58567. (1000·4.16505·90 + 500·1.58567·20) / (4165.05 + 792.84) = 78.81 °C.
  const State syrup = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="sugar-white">500 g</ingredient>
      <step do="dissolve" makes="made">Dissolve <use of="b" at="20 °C">b</use> in <use of="a" at="90 °C">a</use>.</step>)");
  CHECK(syrup.celsius.middle() == Approx(78.81).margin(by_hand));
  CHECK(syrup.celsius.width() < 0.1);
}

TEST_CASE("the bounds of what meets are the bounds of the mix", "[states]") {
  // 1 kg at 80 to 90 °C, 1 kg at 10 to 20 °C: from (4.15666·80 + 4.12854·10) / 8.28520 = 45.12 to
  // (4.16505·90 + 4.12927·20) / 8.29432 = 55.15 °C; each weighs by the heat of its own middle.
  const State made = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="water">1 kg</ingredient>
      <step do="mix" makes="made">Mix <use of="a" at="80–90 °C">a</use> and <use of="b" at="10–20 °C">b</use>.</step>)");
  CHECK(made.celsius.low == Approx(45.12).margin(0.15));
  CHECK(made.celsius.high == Approx(55.15).margin(0.15));
}

TEST_CASE("fat that is set cools what melts it, by no more than all of its heat", "[states]") {
  // 100 g butter (81.11 g fat, up to 85 J a g of fat) at 10 °C into 1 kg water at 60 °C. Butter at 10 °C: 17.94 % water,
  // 81.11 % fat, the rest little: about 2.38 kJ/(kg K). Without melting (4143·60 + 238·10) / 4381 = 57.3 °C; melting all
  // of it takes 6894 J, 1.6 K.
  const State made = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="butter-unsalted">100 g</ingredient>
      <step do="mix" makes="made">Mix <use of="a" at="60 °C">a</use> and <use of="b" at="10 °C">b</use>.</step>)");
  CHECK(made.celsius.high == Approx(57.3).margin(0.1));
  CHECK(made.celsius.low == Approx(55.7).margin(0.1));
  const State oil = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="oil-sunflower">100 g</ingredient>
      <step do="mix" makes="made">Mix <use of="a" at="60 °C">a</use> and <use of="b" at="10 °C">b</use>.</step>)");
  CHECK(oil.celsius.width() < 0.01);
  // What was melted before takes nothing.
  const State melted = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="butter-unsalted">100 g</ingredient>
      <step do="mix" makes="made">Mix <use of="a" at="60 °C">a</use> and <use of="b" at="45 °C">b</use>.</step>)");
  CHECK(melted.celsius.width() < 0.1);
}

TEST_CASE("ice holds the mix at its melting until it is gone", "[states]") {
  // 500 g of ice at -20 °C into 1 kg of water at 20 °C: melting takes 166.75 kJ, the water gives 82.6 kJ down to 0 °C.
  const State made = mixed(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="water">500 g</ingredient>
      <step do="mix" makes="made">Mix <use of="a" at="20 °C">a</use> and <use of="b" at="-20 °C">b</use>.</step>)");
  CHECK(made.celsius.low <= 0);
  CHECK(made.celsius.low >= -3);
  CHECK(made.celsius.high <= 10);
}

TEST_CASE("what a step states of the food is what it leaves", "[states]") {
  struct Row {
    const char* step;
    double low, high;
  };
  const Row rows[] = {
      {R"(<step do="cook" on="hob" makes="made">Stir <use of="a">a</use> to <food-temp>82–84 °C</food-temp>.</step>)", 82, 84},
      {R"(<step do="cook" on="hob" makes="made">Cook <use of="a">a</use>, <until>until it reaches <food-temp>82 °C</food-temp></until>.</step>)", 82, 82},
      {R"(<step do="melt cool" makes="made">Warm <use of="a">a</use> to <food-temp>45 °C</food-temp>, cool to <food-temp>28 °C</food-temp>.</step>)", 28, 28},
      {R"(<step do="cook" on="hob" makes="made">Stir <use of="a">a</use> to <food-temp>82 °C</food-temp>, then cool.</step>)", 17, 82},
      {R"(<step do="heat" on="hob" makes="made">Heat <use of="a">a</use> to <food-temp>boiling</food-temp>.</step>)", 98.97, 100.97},
      // Of a surface, and of one thing it takes: not of the food.
      {R"(<step do="mix" makes="made">Mix <use of="a" at="20 °C">a</use> with a bowl of <food-temp place="surface">60 °C</food-temp>.</step>)", 20, 20},
      {R"(<step do="mix" makes="made">Mix <use of="a">a</use> at <food-temp of="a">33 °C</food-temp>.</step>)", 33, 33},
      {R"(<step do="cool" makes="made">Cool <use of="a" at="80 °C">a</use> below <food-temp>6 °C</food-temp>.</step>)", -2, 6},
      {R"(<step do="boil" on="hob" makes="made">Boil <use of="a">a</use> to <food-temp>104.5 °C</food-temp>, <until>until a drop on a cold plate wrinkles</until>.</step>)", 104.5, 104.5},
      // A moment on the way is not what it comes to.
      {R"(<step do="boil" on="hob" makes="made">Boil <use of="a">a</use> to <food-temp>121 °C</food-temp>. At <food-temp>114 °C</food-temp> start the mixer.</step>)", 121, 121},
      {R"(<step do="whisk" makes="made">Whisk <use of="a">a</use> to <food-temp>45 °C</food-temp>, then off the heat, <until>to the ribbon</until>.</step>)", 17, 45},
      // A gate on what is made, a gate on what is taken.
      {R"(<step do="cool" makes="made">Cool <use of="a" at="80 °C">a</use>.<gate>At <food-temp>20–22 °C</food-temp>.</gate></step>)", 20, 22},
      {R"(<step do="mix" makes="made">Mix <use of="a">a</use>.<gate of="a">At <food-temp of="a">30 °C</food-temp>.</gate></step>)", 30, 30},
      {R"(<step do="chill" on="fridge" makes="made">Chill <use of="a" at="20 °C">a</use>.<control>At <food-temp place="core">at most 5 °C</food-temp>.</control></step>)", 0, 5},
  };
  for (const Row& row : rows) {
    CAPTURE(row.step);
    const State made = mixed(R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>)" + std::string(row.step));
    CHECK(made.celsius.low == Approx(row.low).margin(0.02));
    CHECK(made.celsius.high == Approx(row.high).margin(0.02));
  }
}

TEST_CASE("what goes in behind the figure meets it, and does not have it", "[states]") {
  // 500 g water at 90 °C, then 500 g at 10 °C: (4.16505·90 + 4.12854·10) / 8.29359 = 50.17 °C.
  const State made = mixed(R"(<ingredient id="a" food="water">500 g</ingredient><ingredient id="b" food="water">500 g</ingredient>
      <step do="heat" on="hob" makes="made">Heat <use of="a">a</use> to <food-temp>90 °C</food-temp> and pour it on <use of="b" at="10 °C">b</use>.</step>)");
  CHECK(made.celsius.middle() == Approx(50.17).margin(0.6));  // up to 3 % of the water may have gone off
  CHECK(made.heat.celsius < 52);
}

TEST_CASE("what is only put to what was heated is not said to have been heated", "[states]") {
  struct Row {
    const char* step;
    bool all;
  };
  const Row rows[] = {
      {R"(<step do="boil" on="hob" makes="made">Mix <use of="a">milk</use> and <use of="b">yolks</use> and bring to the boil.</step>)", true},
      {R"(<step do="boil" on="hob" makes="made">Boil the <use of="a">milk</use> with the <use of="b">yolks</use>.</step>)", true},
      {R"(<step do="boil" on="hob" makes="made">Boil the <use of="a">milk</use>, pour it over the <use of="b">yolks</use>.</step>)", false},
      {R"(<step do="boil mix" on="hob" makes="made">The <use of="a">milk</use>, the <use of="b">yolks</use>.</step>)", false},
      {R"(<step do="mix boil" on="hob" makes="made">The <use of="a">milk</use>, the <use of="b">yolks</use>.</step>)", true},
      {R"(<step do="boil" on="hob" makes="made">Boil the <use of="a">milk</use>, pour it over the <use of="b">yolks</use>, back in the pan bring to the boil.</step>)", true},
  };
  for (const Row& row : rows) {
    CAPTURE(row.step);
    const State made = mixed(R"(<ingredient id="a" food="milk-whole">800 g</ingredient><ingredient id="b" food="egg-yolk">200 g</ingredient>)" +
                             std::string(row.step));
    CHECK((made.heat.celsius > 98) == row.all);
    CHECK((made.celsius.low > 98) == row.all);
    CHECK(made.celsius.high > 98);
  }
}

TEST_CASE("a figure at the head of the sentence is of what was made before", "[states]") {
  // 300 g water at 60 °C and 100 g water at 20 °C: about 50 °C.
  const auto made = states_of(component_of(R"(<ingredient id="a" food="water">300 g</ingredient><ingredient id="b" food="water">100 g</ingredient>
      <step do="heat" on="hob" makes="hot">Heat <use of="a">a</use> to <food-temp>90 °C</food-temp>.</step>
      <step do="mix" makes="made">At <food-temp>60 °C</food-temp> stir <use of="b" at="20 °C">b</use> into the <use of="hot">water</use>.</step>)"));
  CHECK(made.named("made").celsius.middle() == Approx(50).margin(0.3));
}

TEST_CASE("a figure right behind one of several things is of that one, where nothing is heated", "[states]") {
  const std::string things = R"(<ingredient id="a" food="water" at="20 °C">300 g</ingredient><ingredient id="b" food="water">100 g</ingredient>)";
  // 300 g water at 20 °C and 100 g at 60 °C: about 30 °C.
  const State met = mixed(things + R"(<step do="mix" makes="made">Stir into <use of="a">a</use> the <use of="b">b</use> at <food-temp>60 °C</food-temp>.</step>)");
  CHECK(met.celsius.middle() == Approx(30).margin(0.3));
  const State to = mixed(things + R"(<step do="mix" makes="made">Stir <use of="a">a</use> and <use of="b">b</use> to <food-temp>60 °C</food-temp>.</step>)");
  CHECK(to.celsius == Range{60, 60});
  const State heated = mixed(things + R"(<step do="cook" makes="made">Cook <use of="a">a</use> and <use of="b">b</use> at <food-temp>60 °C</food-temp>.</step>)");
  CHECK(heated.celsius == Range{60, 60});
}

TEST_CASE("what is beaten warm cools meanwhile", "[states]") {
  const State made = mixed(R"(<ingredient id="a" food="egg-white">200 g</ingredient><ingredient id="b" food="sugar-white">200 g</ingredient>
      <step do="whip" makes="made">Whip <use of="a" at="60 °C">a</use> and <use of="b" at="60 °C">b</use>.</step>)");
  is(made.celsius, 17, made.celsius.high);
  CHECK(made.celsius.high == Approx(60).margin(0.01));
}

TEST_CASE("fat that is heated first is what is fried in", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="o" food="oil-sunflower" purpose="bath">1 kg</ingredient><ingredient id="a" food="potato">500 g</ingredient>
      <step do="heat" on="hob" makes="hot-oil">Heat the <use of="o">oil</use>.</step>
      <step do="deep-fry" makes="made">Fry the <use of="a">potatoes</use> in the <use of="hot-oil">oil</use>.</step>)"));
  is(*made.named("hot-oil").grams, 0);
  CHECK(made.named("made").grams->high == Approx(600));  // up to a fifth of its weight in fat
  CHECK(made.named("made").why_grams.any());
}

TEST_CASE("where nothing is stated the temperature stays open on the side it can go", "[states]") {
  struct Row {
    const char* step;
    double low, high;
    Why::Reason why;
  };
  const Row rows[] = {
      {R"(<step do="heat" on="hob" makes="made">Heat <use of="a" at="20 °C">a</use>.</step>)", 20, 102.97, Why::Reason::heated},
      {R"(<step do="bake" on="oven" makes="made">Bake <use of="a" at="20 °C">a</use> at <oven-temp>180 °C</oven-temp>.</step>)", 20, 102.97, Why::Reason::oven},
      {R"(<step do="bake" on="oven" makes="made">Dry <use of="a" at="20 °C">a</use> at <oven-temp>60 °C</oven-temp>.</step>)", 20, 60, Why::Reason::oven},
      {R"(<step do="rest" makes="made">Rest <use of="a" at="60 °C">a</use>.</step>)", 17, 60, Why::Reason::waited},
      {R"(<step do="rest" on="fridge" makes="made">Rest <use of="a" at="60 °C">a</use>.</step>)", 0, 60, Why::Reason::waited},
      {R"(<step do="freeze" makes="made">Freeze <use of="a" at="10 °C">a</use>.</step>)", -26, 10, Why::Reason::waited},
      {R"(<step do="proof" makes="made">Proof <use of="a" at="24 °C">a</use> at <medium-temp of="proofer">27 °C</medium-temp>.</step>)", 24, 27, Why::Reason::waited},
      {R"(<step do="boil" on="hob" makes="made">Boil <use of="a">a</use>.</step>)", 98.97, 102.97, Why::Reason::heated},
      {R"(<step do="simmer" on="hob" makes="made">Simmer <use of="a">a</use>.</step>)", 83.97, 102.97, Why::Reason::heated},
      {R"(<step do="stir" on="hob" makes="made">Stir <use of="a" at="20 °C">a</use>.</step>)", 20, 102.97, Why::Reason::heated},
  };
  for (const Row& row : rows) {
    CAPTURE(row.step);
    const State made = mixed(R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>)" + std::string(row.step));
    CHECK(made.celsius.low == Approx(row.low).margin(0.02));
    CHECK(made.celsius.high == Approx(row.high).margin(0.02));
    CHECK(made.why_celsius.reason == row.why);
  }
}

TEST_CASE("a food starts as it is kept, or as a word beside it says", "[states]") {
  struct Row {
    const char* line;
    const char* use;
    double low, high;
  };
  const Row rows[] = {
      {R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>)", R"(<use of="a">milk</use>)", 0, 8},
      {R"(<ingredient id="a" food="sugar-white">1 kg</ingredient>)", R"(<use of="a">sugar</use>)", 16, 26},
      {R"(<ingredient id="a" food="butter-unsalted" prep="softened">1 kg</ingredient>)", R"(<use of="a">butter</use>)", 17, 26},
      {R"(<ingredient id="a" food="butter-unsalted" prep="melted">1 kg</ingredient>)", R"(<use of="a">butter</use>)", 28, 60},
      {R"(<ingredient id="a" food="cream-35" at="at most 6 °C">1 kg</ingredient>)", R"(<use of="a">cream</use>)", 0, 6},
      {R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>)", R"(the boiled <use of="a">milk</use>)", 85, 100.97},
      {R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>)", R"(<use of="a">the lukewarm milk</use>)", 35, 40},
      {R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>)", R"(<use of="a" as="boiling">milk</use>)", 98.97, 100.97},
      {R"(<ingredient id="a" food="water" name="cold water">1 kg</ingredient>)", R"(<use of="a">water</use>)", 0, 14},
      // "whipped soft" is no butter left out to soften.
      {R"(<ingredient id="a" food="cream-35" prep="whipped soft">1 kg</ingredient>)", R"(<use of="a">cream</use>)", 0, 8},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line, row.use);
    const State made = mixed(std::string(row.line) + "<step do=\"mix\" makes=\"made\">Mix " + row.use + " well.</step>");
    CHECK(made.celsius.low == Approx(row.low).margin(0.02));
    CHECK(made.celsius.high == Approx(row.high).margin(0.02));
  }
}

TEST_CASE("what stands before it is used comes toward the room", "[states]") {
  // The next step takes it at once; one behind a wait does not.
  const auto made = states_of(component_of(R"(<ingredient id="a" food="water">1 kg</ingredient><ingredient id="b" food="sugar-white">1 kg</ingredient>
      <ingredient id="d" food="water">1 kg</ingredient>
      <step do="heat" on="hob" makes="hot">Heat <use of="a">a</use> to <food-temp>80 °C</food-temp>.</step>
      <step do="rest" makes="sweet">Rest <use of="b">b</use>.</step>
      <step do="mix" makes="made">Mix <use of="hot">it</use> and <use of="d" at="20 °C">d</use>.</step>)"));
  const flow::Flow& flow = made.flowing->flow;
  for (const int use : flow.steps[2].takes) {
    if (flow.things[static_cast<std::size_t>(flow.uses[static_cast<std::size_t>(use)].thing)].id != "hot") continue;
    is(made.states.uses[static_cast<std::size_t>(use)].celsius, 17, 80);
  }
  CHECK(made.step(0).celsius == Range{80, 80});
}

TEST_CASE("the heat that all of it has had", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="y" food="egg-yolk">200 g</ingredient><ingredient id="m" food="milk-whole">800 g</ingredient>
      <ingredient id="w" food="cream-35">500 g</ingredient>
      <step do="cook" on="hob" makes="custard">Stir <use of="y">y</use> and <use of="m">m</use> to <food-temp for="15 s">82–84 °C</food-temp>.</step>
      <step do="cool" makes="cold">Cool <use of="custard">it</use> to <food-temp>25 °C</food-temp>.</step>
      <step do="fold" makes="mousse">Fold <use of="w" at="4 °C">cream</use> into <use of="cold">it</use>.</step>)"));
  CHECK(made.named("custard").heat == flow::HeatHad{82, 15});
  CHECK(made.named("cold").heat == flow::HeatHad{82, 15});
  CHECK(made.named("mousse").heat.celsius < 25);  // the cream was in no pan
  const auto stew = states_of(component_of(R"(<ingredient id="m" food="beef-stewing">1 kg</ingredient><ingredient id="w" food="water">1 kg</ingredient>
      <step do="simmer" on="hob" makes="stew">Simmer <use of="m">m</use> in <use of="w">w</use> for <time>2 h</time>.</step>)"));
  CHECK(stew.named("stew").heat.celsius == Approx(83.97).margin(0.02));
  CHECK(stew.named("stew").heat.seconds == 7200);
}

TEST_CASE("depth and vessel are those that the step states, until it is moved", "[states]") {
  const auto made = states_of(fiche_of(R"(<yield><mould id="frame" shape="frame" fill="3.4 cm"/></yield><component id="c" title="C">
      <ingredient id="a" food="milk-whole">1 kg</ingredient>
      <step do="spread" makes="sheet">Spread <use of="a">a</use> <length>1 cm</length> deep.</step>
      <step do="bake" on="oven">Bake.</step><step do="cut" makes="pieces">Cut.</step>
      <step do="fill" makes="filled">Fill the <tool ref="frame">frame</tool>.</step></component>)"));
  CHECK(made.named("sheet").depth_mm == std::optional(10.0));
  CHECK(made.step(1).depth_mm == std::optional(10.0));
  CHECK_FALSE(made.step(2).depth_mm);
  CHECK(made.named("filled").depth_mm == std::optional(34.0));
  CHECK(made.named("filled").vessel != fiche::none);
}

TEST_CASE("a kitchen's own fridge, room and height", "[states]") {
  const auto text = component_of(R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>
      <step do="boil" on="hob" makes="hot">Boil <use of="a">a</use>.</step><step do="chill" on="walk-in" makes="made">Chill <use of="hot">it</use>.</step>)");
  auto flowing = tests::flow_of(text);
  const char* kitchen = R"(<kitchen xmlns="urn:tamis:fiche:1" name="K" altitude="2000 m"><cold id="walk-in" kind="fridge" at="5 °C"/></kitchen>)";
  format::Read read = format::read(std::make_shared<const base::Source>("kitchen.xml", kitchen));
  REQUIRE(read.document);
  flowing->kitchen = fiche::read_kitchen(std::move(read.document));
  flowing->fiche = fiche::read_fiche(*flowing->document, flowing->kitchen);
  const flow::States states = flow::read_states(flowing->fiche, flowing->flow, fiche::empty_library());
  CHECK(states.steps[0].celsius.low == Approx(92.3).margin(0.1));  // 93.3 °C at 2,000 m, weather 1 K
  CHECK(states.steps[1].celsius.low == 2);
}

TEST_CASE("how old what is taken can be", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="a" food="milk-whole">1 kg</ingredient>
      <step id="s" do="boil" makes="hot">Boil <use of="a">a</use>.</step>
      <step do="pour" makes="made" after="s" at-least="10 min" at-most="30 min">Pour <use of="hot">it</use>.</step>)"));
  const flow::StepTimes times = flow::read_step_times(made.flowing->fiche, made.flowing->flow);
  flow::Ages ages(made.flowing->flow, times);
  const int use = made.flowing->flow.steps[1].takes[0];
  CHECK(ages.of_use(use) == flow::TimeRange{600, 1800});
  CHECK_FALSE(ages.of_use(made.flowing->flow.steps[0].takes[0]));
}

}  // namespace
}  // namespace tamis
