#include <random>

#include "tests/flow/stated.h"

namespace tamis {
namespace {

using flow::Constituent;
using flow::State;
using flow::Why;
using tests::component_of;
using tests::fiche_of;
using tests::is;
using tests::states_of;

TEST_CASE("a mix holds what its foods hold", "[states]") {
  // White sugar: 99.98 g carbohydrate, 99.8 g of it sugars, 0.02 g water; water is water (core/food/table).
  const food::Food& sugar = *food::food_by_id("sugar-white");
  const auto made = states_of(component_of(R"(<ingredient id="s" food="sugar-white">300 g</ingredient>
      <ingredient id="w" food="water">200 g</ingredient>
      <step do="mix" makes="syrup">Mix <use of="s">s</use> and <use of="w">w</use>.</step>)"));
  const State& syrup = made.named("syrup");
  REQUIRE(syrup.grams);
  is(*syrup.grams, 500);
  is(syrup.share(Constituent::sugars), 0.6 * sugar.per_100_g.sugars / 100);
  CHECK(syrup.share(Constituent::water).low == Approx(0.4 * food::food_by_id("water")->per_100_g.water / 100 +
                                                      0.6 * sugar.per_100_g.water / 100));
  CHECK(syrup.knows_shares());
}

TEST_CASE("what is reduced loses water and nothing else", "[states]") {
  // 500 g with 300 g sugar, 100 g boiled off: 300 of 400 g.
  const double sugars = food::food_by_id("sugar-white")->per_100_g.sugars / 100;
  for (const char* reduced : {R"(reduce-by="100 g")", R"(reduce-to="400 g")", R"(reduce-to="4/5")"}) {
    CAPTURE(reduced);
    const auto made = states_of(component_of(R"(<ingredient id="s" food="sugar-white">300 g</ingredient>
        <ingredient id="w" food="water">200 g</ingredient>
        <step do="reduce" makes="syrup" )" + std::string(reduced) +
        R"(>Boil <use of="s">s</use> and <use of="w">w</use> down.</step>)"));
    const State& syrup = made.named("syrup");
    REQUIRE(syrup.grams);
    is(*syrup.grams, 400);
    is(syrup.share(Constituent::sugars), 0.75 * sugars);
  }
}

TEST_CASE("what boils without a word about it keeps a bound of what went off", "[states]") {
  // boil: up to 15 % (actions.inc). 500 g with 300 g sugar: 425 to 500 g, sugar from 300/500 to 300/425.
  const double sugars = food::food_by_id("sugar-white")->per_100_g.sugars / 100;
  const auto made = states_of(component_of(R"(<ingredient id="s" food="sugar-white">300 g</ingredient>
      <ingredient id="w" food="water">200 g</ingredient>
      <step do="boil" makes="syrup">Boil <use of="s">s</use> and <use of="w">w</use>.</step>)"));
  const State& syrup = made.named("syrup");
  REQUIRE(syrup.grams);
  is(*syrup.grams, 425, 500);
  is(syrup.share(Constituent::sugars), 0.6 * sugars, 300 * sugars / 425);
  CHECK(syrup.why_grams.reason == Why::Reason::steam);
  CHECK(flow::tell(syrup.why_grams, made.flowing->fiche, made.flowing->flow) ==
        "how much goes off as steam in step 1 is not stated");
}

TEST_CASE("no more goes off than the time, the lid and the heat allow", "[states]") {
  struct Row {
    const char* step;
    double least;  // g left of 20 kg
  };
  // A ring or kettle takes at most 1.3 % of 20 kg a minute (do_actions.cpp): 2 min 2.6 %; a lid at most 3 %; simmering a
  // quarter: 20 min 6.5 %; to 85 °C 3 %; boil without a time 15 %.
  const Row rows[] = {
      {R"(<step do="boil" makes="made">Boil <use of="w">w</use> for <time>2 min</time>.</step>)", 19480},
      {R"(<step do="boil" makes="made">Cover, and boil <use of="w">w</use> for <time>20 min</time>.</step>)", 19400},
      {R"(<step do="boil" makes="made">Boil <use of="w">w</use> uncovered for <time>20 min</time>.</step>)", 17000},
      {R"(<step do="simmer" makes="made">Simmer <use of="w">w</use> for <time>20 min</time>.</step>)", 18700},
      {R"(<step do="cook" makes="made">Cook <use of="w">w</use> to <food-temp>85 °C</food-temp>.</step>)", 19400},
      {R"(<step do="boil" makes="made">Boil <use of="w">w</use>.</step>)", 17000},
  };
  for (const Row& row : rows) {
    CAPTURE(row.step);
    const auto made = states_of(component_of(R"(<ingredient id="w" food="milk-whole">20 kg</ingredient>)" + std::string(row.step)));
    REQUIRE(made.named("made").grams);
    CHECK(made.named("made").grams->low == Approx(row.least));
    CHECK(made.named("made").grams->high == Approx(20000));
  }
}

TEST_CASE("what the fiche itself leaves open is said to be that", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="w" food="water">200 to 300 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient>
      <step do="mix" makes="made">Mix <use of="w">w</use> and <use of="s">s</use>.</step>)"));
  is(*made.named("made").grams, 300, 400);
  CHECK(made.named("made").why_grams.reason == Why::Reason::range);
  CHECK(made.named("made").why_shares.reason == Why::Reason::range);
}

TEST_CASE("a little of an unknown food leaves the mix known, much of it does not", "[states]") {
  const auto of = [](const char* grams) {
    return states_of(component_of(R"(<ingredient id="w" food="water">1000 g</ingredient><ingredient id="x" name="grains">)" +
                                  std::string(grams) +
                                  R"(</ingredient><step do="mix" makes="m">Mix <use of="w">w</use> and <use of="x">x</use>.</step>)"));
  };
  const auto little = of("10 g");
  CHECK(little.named("m").share(Constituent::fat).low == 0);
  CHECK(little.named("m").share(Constituent::fat).high == Approx(10.0 / 1010));
  CHECK(little.named("m").knows_shares());
  const auto much = of("1000 g");
  CHECK_FALSE(much.named("m").knows_shares());
  CHECK(much.named("m").why_shares.reason == Why::Reason::food_unknown);
  CHECK(flow::tell(much.named("m").why_shares, much.flowing->fiche, much.flowing->flow) == "what food \"grains\" is is not known");
}

TEST_CASE("an action that nobody knows leaves nothing known", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="w" food="milk-whole">1000 g</ingredient>
      <step do="whirl" makes="m">Whirl <use of="w">w</use>.</step><step do="mix" makes="n">Mix <use of="m">m</use>.</step>)"));
  for (const char* id : {"m", "n"}) {
    const State& state = made.named(id);
    CHECK_FALSE(state.grams);
    CHECK_FALSE(state.knows(Constituent::water));
    CHECK(state.why_shares.reason == Why::Reason::action_unknown);
    CHECK(state.sure != 0);  // milk stays milk
    CHECK(flow::tell(state.why_shares, made.flowing->fiche, made.flowing->flow) == "what \"whirl\" does in step 1 is not known");
  }
}

TEST_CASE("what is divided is known apart where dividing changes nothing", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="p" food="pear">500 g</ingredient><ingredient id="w" food="water">500 g</ingredient>
      <step do="poach" makes="fruit syrup">Poach <use of="p">p</use> in <use of="w">w</use>.</step>
      <step do="mix" makes="all">Mix <use of="fruit syrup">both</use>.</step>)"));
  CHECK_FALSE(made.named("fruit").knows(Constituent::water));
  CHECK(made.named("fruit").why_shares.reason == Why::Reason::divided);
  CHECK(made.named("all").knows(Constituent::water));
  const auto halves = states_of(component_of(R"(<ingredient id="p" food="butter-unsalted">500 g</ingredient>
      <step do="divide" makes="a b">Divide <use of="p">p</use>.</step>)"));
  CHECK_FALSE(halves.named("a").grams);
  is(halves.named("a").share(Constituent::fat), 0.8111);
}

TEST_CASE("fat that is stated leaves the rest of the food as it is", "[states]") {
  // Cream of 35 % in the table; at 40 % its water, protein and sugars are 60/65 of what they were (Pearson's square).
  const food::Food& cream = *food::food_by_id("cream-35");
  const auto made = states_of(component_of(R"(<ingredient id="k" food="cream-35" fat="40 %">100 g</ingredient>
      <step do="stir" makes="m">Stir <use of="k">k</use>.</step>)"));
  is(made.named("m").share(Constituent::fat), 0.40);
  const double factor = 0.60 / (1 - cream.per_100_g.fat / 100);
  CHECK(made.named("m").share(Constituent::protein).low == Approx(factor * cream.per_100_g.protein / 100));
}

TEST_CASE("allergens go where the food goes, and stay assumed", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="k" food="chocolate-dark-70">100 g</ingredient>
      <ingredient id="e" food="egg-yolk">50 g</ingredient>
      <step do="melt" makes="m">Melt <use of="k">k</use>.</step><step do="whisk" makes="n">Whisk in <use of="e">e</use>.</step>)"));
  std::vector<std::string_view> none;
  const auto egg = food::read_allergens("egg", none), soy = food::read_allergens("soy", none);
  CHECK((made.named("m").sure & egg) == 0);
  CHECK((made.named("m").assumed & soy) == soy);
  CHECK((made.named("n").sure & egg) == egg);
  CHECK((made.named("n").assumed & soy) == soy);
  CHECK_FALSE(made.named("n").allergens_open);
}

TEST_CASE("how much of a line is in a result", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="g" food="gelatine-leaf">10 g</ingredient><ingredient id="w" food="water">40 g</ingredient>
      <ingredient id="m" food="milk-whole">450 g</ingredient>
      <step do="soak" makes="soaked">Soak <use of="g">g</use> in <use of="w">w</use>.</step>
      <step do="mix" makes="base">Stir <use of="soaked">it</use> into <use of="m">m</use>.</step>)"));
  const int leaf = made.flowing->flow.thing_named("g");
  REQUIRE(made.states.held(1, leaf));
  is(*made.states.held(1, leaf), 10.0 / 500);
  is(*made.states.held(0, leaf), 10.0 / 50);
  const auto glaze = states_of(component_of(R"(<ingredient id="w" food="wine-red">1 kg</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient>
      <step do="reduce" reduce-to="220 g" makes="glaze">Boil <use of="w">w</use> and <use of="s">s</use> down.</step>)"));
  is(*glaze.states.held(0, glaze.flowing->flow.thing_named("w")), 1000.0 / 220);
}

TEST_CASE("a component of another file brings what it is made of", "[states]") {
  tests::FlowLibrary library;
  library.texts["base.xml"] = fiche_of(R"(<component id="syrup" title="Syrup"><ingredient id="s" food="sugar-white">100 g</ingredient>
      <ingredient id="w" food="water">100 g</ingredient><step do="mix" makes="x">Mix <use of="s">s</use> and <use of="w">w</use>.</step></component>)");
  const double sugars = food::food_by_id("sugar-white")->per_100_g.sugars / 100;
  const auto taken = states_of(fiche_of(R"(<component id="a" title="A" from="base.xml#syrup"/>
      <component id="b" title="B"><step do="pour" makes="y">Pour the <use of="a">syrup</use>.</step></component>)"), library);
  is(taken.named("y").share(Constituent::sugars), 0.5 * sugars);
  const auto swapped = states_of(fiche_of(R"(<component id="a" title="A" from="base.xml#syrup"><override ingredient="w" food="milk-whole">300 g</override></component>
      <component id="b" title="B"><step do="pour" makes="y">Pour the <use of="a">syrup</use>.</step></component>)"), library);
  CHECK(swapped.named("y").share(Constituent::sugars).low == Approx(0.25 * sugars + 0.75 * food::food_by_id("milk-whole")->per_100_g.sugars / 100));
  CHECK(swapped.named("y").sure != 0);
  const auto line = states_of(component_of(R"(<ingredient id="a" from="base.xml#syrup">400 g</ingredient><step do="pour" makes="y">Pour <use of="a">a</use>.</step>)"), library);
  REQUIRE(line.named("y").grams);
  is(*line.named("y").grams, 400);
  is(line.named("y").share(Constituent::sugars), 0.5 * sugars);
  const auto missing = states_of(component_of(R"(<ingredient id="a" from="none.xml#syrup">400 g</ingredient><step do="pour" makes="y">Pour <use of="a">a</use>.</step>)"), library);
  CHECK(missing.named("y").why_shares.reason == Why::Reason::file);
  CHECK(missing.named("y").allergens_open);
}

// Steps that lose nothing keep every gram of every constituent, however they divide and put together.
TEST_CASE("nothing is made or lost where nothing is said to be", "[states]") {
  const char* foods[] = {"water", "sugar-white", "butter-unsalted", "egg-whole", "flour-wheat-white", "milk-whole", "cream-35"};
  std::mt19937 random(20260611);
  for (int round = 0; round < 60; ++round) {
    const int lines = 2 + static_cast<int>(random() % 6);
    std::string text;
    std::array<double, flow::constituents> sums{};
    double all = 0;
    for (int i = 0; i < lines; ++i) {
      const food::Food& food = *food::food_by_id(foods[random() % std::size(foods)]);
      const int grams = 1 + static_cast<int>(random() % 500);
      text += "<ingredient id=\"i" + std::to_string(i) + "\" food=\"" + std::string(food.id) + "\">" + std::to_string(grams) + " g</ingredient>";
      const flow::Matter matter = flow::matter_of(food);
      for (std::size_t c = 0; c < flow::constituents; ++c) sums[c] += grams * matter.parts[c].middle();
      all += grams;
    }
    // Some lines in halves into two bowls, which meet in the end.
    std::string first = "<step do=\"mix\" makes=\"a\">", second = "<step do=\"mix\" makes=\"b\">";
    for (int i = 0; i < lines; ++i) {
      const std::string use = "<use of=\"i" + std::to_string(i) + "\"";
      switch (random() % 3) {
        case 0: first += use + ">x</use> "; break;
        case 1: second += use + ">x</use> "; break;
        default:
          first += use + " take=\"1/4\">x</use> ";
          second += use + " take=\"the rest\">x</use> ";
      }
    }
    text += first + "</step>" + second + "</step><step do=\"fold\" makes=\"c\"><use of=\"a\">a</use> <use of=\"b\">b</use></step>";
    CAPTURE(text);
    const auto made = states_of(component_of(text));
    const State& end = made.named("c");
    REQUIRE(end.grams);
    CHECK(end.grams->middle() == Approx(all));
    for (std::size_t c = 0; c < flow::constituents; ++c) {
      CHECK(end.shares[c].middle() * all == Approx(sums[c]).margin(1e-6));
    }
  }
}

TEST_CASE("a state can be handed to a model of heat where its composition is known", "[states]") {
  const auto made = states_of(component_of(R"(<ingredient id="w" food="milk-whole">1 kg</ingredient><ingredient id="x" name="grains">3 kg</ingredient>
      <step do="heat" makes="warm">Heat <use of="w">w</use> to <food-temp>40 °C</food-temp>.</step>
      <step do="mix" makes="all">Mix in <use of="x">x</use>.</step>)"));
  const auto milk = food::makeup_of(food::food_by_id("milk-whole")->per_100_g).makeup;
  const auto warm = flow::makeup_of(made.named("warm"));
  REQUIRE(milk);
  REQUIRE(warm);
  CHECK(warm->water == Approx(milk->water).margin(0.01));  // up to 3 % may have gone off
  CHECK(warm->fat == Approx(milk->fat).margin(0.002));
  CHECK(warm->water + warm->protein + warm->fat + warm->carbohydrate + warm->fibre + warm->ash + warm->alcohol == Approx(1));
  CHECK_FALSE(flow::makeup_of(made.named("all")));
}

TEST_CASE("every action of the table is said once, in small letters", "[states]") {
  for (const flow::Action& action : flow::actions()) {
    CAPTURE(action.word);
    CHECK(flow::action_named(action.word) == &action);
    CHECK(action.off >= 0);
    CHECK(action.off <= 0.9);
    CHECK((action.off == 0 || action.heats() || action.cools() || action.word == "hold" || action.word == "stop"));
  }
  CHECK(flow::action_named("whirl") == nullptr);
}

}  // namespace
}  // namespace tamis
