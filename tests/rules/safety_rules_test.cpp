#include <catch2/catch.hpp>

#include <string>

#include "tests/rules/checking.h"

using namespace tamis;

namespace {

constexpr const char* safety[] = {"held-too-cool",           "kept-too-warm",         "kept-out-of-the-cold",
                                  "kept-beyond-its-date",    "cooled-too-slowly",     "long-in-the-danger-zone",
                                  "cooked-below-its-limit",  "reheated-too-little",   "control-weaker-than-limit",
                                  "raw-egg-without-caution", "raw-fish-not-frozen", "thawed-too-warm",   "raw-sprouts-without-caution",
                                  "honey-for-infants",       "need-for-cold-unknown"};

/// A message without the source in brackets at its end.
std::string without_source(const std::string& message) {
  int open = 0;
  for (std::size_t i = message.size(); i-- > 0;) {
    open += message[i] == ')' ? 1 : message[i] == '(' ? -1 : 0;
    if (open == 0) return message.substr(0, i > 0 && message[i] == '(' ? i - 1 : message.size());
  }
  return message;
}

/// What the rules of food safety say of a component, "rule: message" of each without its source, a line each.
std::string said(const std::string& part, const std::string& limits = "") {
  fiche::Kitchen kitchen = tests::kitchen_of("");
  kitchen.limits = limits;
  std::string out;
  for (const base::Finding& finding : tests::check_part(part, kitchen).findings) {
    for (const char* id : safety) {
      if (finding.rule != id) continue;
      out += (out.empty() ? "" : "\n") + finding.rule + ": " + without_source(finding.message);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("what is dry, sweet or baked through keeps out of the cold; custard and stock do not") {
  const std::string shelf = "<keep where=\"dry store\" for=\"5 days\"/>";
  // sponge
  CHECK(said(R"(<ingredient id="egg" food="egg-whole">250 g</ingredient>
<ingredient id="sugar" food="sugar-white">150 g</ingredient>
<ingredient id="flour" food="flour-wheat-white">150 g</ingredient>
<step do="whip" makes="foam">Whip the <use of="egg">egg</use> and <use of="sugar">sugar</use>.</step>
<step do="fold" makes="mix">Fold the <use of="flour">flour</use> into the <use of="foam">foam</use>.</step>
<step do="bake" on="oven">Bake the <use of="mix">mix</use> at <oven-temp>180 °C</oven-temp> for <time>20
min</time>.</step>)" + shelf)
            .empty());
  // meringue, dried
  CHECK(said(R"(<ingredient id="white" food="egg-white">100 g</ingredient>
<ingredient id="sugar" food="sugar-white">200 g</ingredient>
<step do="whip" makes="foam">Whip the <use of="white">whites</use> with the <use of="sugar">sugar</use>.</step>
<step do="bake" on="oven">Dry the <use of="foam">meringue</use> at <oven-temp>95 °C</oven-temp> for <time>2
h</time>.</step>)" + shelf)
            .empty());
  // caramel
  CHECK(said(R"(<ingredient id="cream" food="cream-35">100 g</ingredient>
<ingredient id="sugar" food="sugar-white">300 g</ingredient>
<step do="caramelise">Cook the <use of="cream">cream</use> and <use of="sugar">sugar</use> to <food-temp>121
°C</food-temp>.</step>)" +
             shelf)
            .empty());
  // jam
  CHECK(said(R"(<ingredient id="berry" food="raspberry">1 kg</ingredient>
<ingredient id="sugar" food="sugar-white">900 g</ingredient>
<step do="boil">Boil the <use of="berry">berries</use> and <use of="sugar">sugar</use> to <food-temp>105
°C</food-temp>.</step>)" + shelf)
            .empty());
  // pastry cream
  const std::string cream =
      R"(<ingredient id="milk" food="milk-whole">1 l</ingredient><ingredient id="yolk" food="egg-yolk">160 g</ingredient>
<ingredient id="starch" food="starch-maize">80 g</ingredient><ingredient id="sugar" food="sugar-white">200 g</ingredient>
<step do="boil">Boil the <use of="milk">milk</use>, <use of="yolk">yolks</use>, <use of="starch">starch</use> and
<use of="sugar">sugar</use>.</step>)";
  CHECK(said(cream + shelf) ==
        "kept-out-of-the-cold: it stands 5 days out of the cold; food that needs it is out for 4 h at most");
}

TEST_CASE("what acid may keep is not accused") {
  const auto sauce = [](const std::string& acid) {
    return said(R"(<ingredient id="yolk" food="egg-yolk">60 g</ingredient>
<ingredient id="oil" food="oil-sunflower">300 g</ingredient>
<ingredient id="lemon" food="lemon-juice">)" + acid + R"(</ingredient><step do="whisk">Whisk the <use of="yolk">yolks</use>,
<use of="oil">oil</use> and <use of="lemon">lemon juice</use>.</step><keep where="fridge" at="at most 12 °C" for="1 day"/>)");
  };
  CHECK(sauce("30 g").empty());
  CHECK(sauce("2 g") == "kept-too-warm: it is kept at up to 12 °C; cold holding is at 5 °C at most");
}

TEST_CASE("what a trial has measured decides, of the thing that it was measured on") {
  const auto creams = [](const std::string& measured) {
    return said(R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en"><title>T</title><component id="c" title="C">
<ingredient id="cream" food="cream-35">500 g</ingredient><ingredient id="milk" food="milk-whole">500 g</ingredient>
<step do="boil" makes="a">Boil the <use of="cream">cream</use>.</step><step do="boil" makes="b">Boil the
<use of="milk">milk</use>.</step><step do="chill" makes="d">Chill the <use of="b">milk</use>.</step>
<keep of="a" where="dry store" for="2 days"/><keep of="d" where="dry store" for="3 days"/></component>
<trial date="2026-03-19" by="sous" batch="1 kg" verdict="passed">)" + measured + "</trial></fiche>");
  };
  const std::string two = "kept-out-of-the-cold: it stands 2 days out of the cold; food that needs it is out for 4 h at most";
  const std::string three = "kept-out-of-the-cold: it stands 3 days out of the cold; food that needs it is out for 4 h at most";
  CHECK(creams("") == two + "\n" + three);
  CHECK(creams("<measured what=\"pH\">5.5</measured>") == two + "\n" + three);
  CHECK(creams("<measured what=\"pH\">3.9</measured>").empty());
  CHECK(creams("<measured what=\"pH\" of=\"a\">3.9</measured>") == three);
  CHECK(creams("<measured what=\"water activity\" of=\"b\">0.84</measured>") == two);
  CHECK(creams("<measured what=\"water activity\" of=\"b\">0.91</measured>") == two + "\n" + three);
  CHECK(creams("<measured what=\"phase\">1</measured>") == two + "\n" + three);
}

TEST_CASE("waits are added up along the food, and a boil begins the sum again but for what makes toxin") {
  const auto stood = [](const std::string& food, const std::string& between) {
    return said("<ingredient id=\"meat\" food=\"" + food + R"(">2 kg</ingredient>
<ingredient id="water" food="water">4 l</ingredient>
<step do="simmer" makes="a" unattended="2 h">Simmer the <use of="meat">meat</use> in the <use of="water">water</use> at
<food-temp>95 °C</food-temp>.</step>
<step do="rest" on="bench" makes="b" unattended="4 h">Leave the <use of="a">pot</use> on the bench for <time>4
h</time>.</step>)" +
                between + R"(
<step do="rest" on="bench" unattended="3 h">Leave the <use of="c">pot</use> on the bench for <time>3 h</time>.</step>)");
  };
  const std::string stirred = R"(<step do="mix" makes="c" hands="5 min">Stir the <use of="b">pot</use>.</step>)";
  const std::string boiled = R"(<step do="boil" makes="c" hands="20 min">Boil the <use of="b">pot</use> at
<food-temp>98 °C</food-temp> for <time>20 min</time>.</step>)";
  const std::string long_stay =
      "long-in-the-danger-zone: it stands at least 5 h between 5 °C and 57 °C by now; "
      "food that needs the cold may stand there for 4 h in all";
  CHECK(stood("chicken-wing", stirred) == long_stay);
  CHECK(stood("chicken-wing", boiled).empty());
  CHECK(stood("rice-white", boiled).find("long-in-the-danger-zone: it stands at least 5 h") == 0);
}

TEST_CASE("the kitchen chooses whose limits it is held to") {
  const auto kept = [](const std::string& at, const std::string& limits) {
    return said(R"(<ingredient id="cream" food="cream-35">500 g</ingredient>
<step do="whip">Whip the <use of="cream">cream</use>.</step><keep where="fridge" at=")" + at + R"(" for="1 day"/>)", limits);
  };
  CHECK(kept("at most 8 °C", "uk").empty());
  CHECK(kept("at most 5 °C", "").empty());
  CHECK(kept("at most 5 °C", "australia").empty());
  CHECK(kept("at most 5 °C", "ontario") == "kept-too-warm: it is kept at up to 5 °C; cold holding is at 4 °C at most");
  CHECK(kept("at most 5 °C", "france") == "kept-too-warm: it is kept at up to 5 °C; cold holding is at 4 °C at most");
  CHECK(kept("at most 8 °C", "us") == "kept-too-warm: it is kept at up to 8 °C; cold holding is at 5 °C at most");
}

TEST_CASE("what is held below the limit goes by time where it is thrown away then") {
  const auto held = [](const std::string& action, const std::string& control) {
    return said(R"(<ingredient id="milk" food="milk-whole">500 g</ingredient>
<ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
<step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>.</step>
<step do="hold" unattended="2 h">Hold the <use of="sauce">sauce</use> at <food-temp>50 °C</food-temp>.<control
hazard="growth of bacteria" check="probe" often="every 30 min" who="the cook" record="sheet" action=")" +
                action + "\">Kept hot, " + control +
                "</control></step>");
  };
  const std::string fifty = "<food-temp>at least 50 °C</food-temp>";
  CHECK(held("discard what is left", fifty + " for <time>at most 2 h</time>").empty());
  CHECK(held("tell the chef", fifty) ==
        "held-too-cool: it is held at 50 °C; hot holding is at 57 °C or more\n"
        "control-weaker-than-limit: the control point asks for at least 50 °C; published is 57 °C or more for hot holding");
  CHECK(held("discard what is left", fifty + " for <time>at most 9 h</time>").find("control-weaker-than-limit") == 0);
}

TEST_CASE("a control point that kills is held to its time too") {
  const auto breast = [](const std::string& limit) {
    return said(R"(<ingredient id="breast" food="chicken-breast">1 kg</ingredient>
<step do="poach" on="hob">Poach the <use of="breast">breasts</use> at <medium-temp of="water bath">68 °C</medium-temp>.<control
hazard="survival of bacteria" check="probe" often="each" who="cook" action="cook on" record="sheet">The core is at
)" + limit + "</control></step>");
  };
  CHECK(breast("<food-temp place=\"core\">at least 65.6 °C</food-temp> for <time>5 min</time>").empty());
  CHECK(breast("<food-temp place=\"core\">at least 65.6 °C</food-temp> for <time>15 s</time>")
            .find("control-weaker-than-limit: the control point asks for at least 65.6 °C; published is ") == 0);
}

TEST_CASE("cooling by stages, each counted from the beginning") {
  const auto cooled = [](const std::string& words, const std::string& limits = "") {
    return said(R"(<ingredient id="wings" food="chicken-wing">2 kg</ingredient>
<ingredient id="water" food="water">4 l</ingredient>
<step do="simmer" makes="stock" hands="10 min" unattended="4 h">Simmer the <use of="wings">wings</use> in the
<use of="water">water</use> at <food-temp>95 °C</food-temp> for <time>4 h</time>.</step>
<step do="cool">Cool the <use of="stock">stock</use>.<control hazard="growth" check="probe" often="each pan" who="the cook"
action="discard" record="sheet">)" + words + "</control></step>", limits);
  };
  const auto stages = [](const std::string& first, const std::string& second) {
    return "From <food-temp>57 °C</food-temp> to <food-temp>21 °C</food-temp> within <time>" + first +
           "</time> and to <food-temp>5 °C</food-temp> within <time>" + second + "</time> more.";
  };
  CHECK(cooled(stages("2 h", "4 h")).empty());
  CHECK(cooled(stages("2 h", "5 h")) ==
        "cooled-too-slowly: it may take 7 h to 5 °C; food cools from 57 °C to 5 °C in 6 h in all");
  CHECK(cooled(stages("3 h", "3 h")) == "cooled-too-slowly: it may take 3 h to 21 °C; food cools from 57 °C to 21 °C in 2 h");
  CHECK(cooled("To <food-temp>10 °C</food-temp> within <time>2 h</time>.", "france").empty());
  CHECK(cooled("To <food-temp>10 °C</food-temp> within <time>3 h</time>.", "france") ==
        "cooled-too-slowly: it may take 3 h to 10 °C; food cools from 63 °C to 10 °C in 2 h");
}

TEST_CASE("ganache, buttercream and soured cream are asked of nobody") {
  const std::string shelf = "<keep where=\"dry store\" for=\"2 days\"/>";
  CHECK(said(R"(<ingredient id="c" food="cream-35">500 g</ingredient><ingredient id="d" food="chocolate-dark-64">500 g</ingredient>
<step do="boil" makes="h">Boil the <use of="c">cream</use>.</step>
<step do="mix" makes="g">Pour the <use of="h">cream</use> on the <use of="d">chocolate</use>.</step>
<step do="rest" on="bench" unattended="12 h">Leave the <use of="g">ganache</use> at room temperature for
<time>12 h</time>.</step>)" + shelf)
            .empty());
  CHECK(said(R"(<ingredient id="w" food="egg-white">300 g</ingredient><ingredient id="s" food="sugar-white">600 g</ingredient>
<ingredient id="b" food="butter-unsalted">900 g</ingredient>
<step do="cook whip" makes="m">Whip <use of="w">whites</use> and <use of="s">sugar</use> to <food-temp>71 °C</food-temp>.</step>
<step do="mix">Beat the <use of="b">butter</use> into the <use of="m">meringue</use>.</step>)" + shelf)
            .empty());
  CHECK(said(R"(<ingredient id="c" food="cream-35">1 l</ingredient><ingredient id="b" food="buttermilk">50 g</ingredient>
<step do="mix" makes="m">Stir the <use of="b">buttermilk</use> into the <use of="c">cream</use>.</step>
<step do="ripen" unattended="24 h">Leave the <use of="m">cream</use> at room temperature for <time>24 h</time>.</step>
<keep where="fridge" at="at most 4 °C" for="10 days"/>)")
            .empty());
  CHECK(said(R"(<ingredient id="m" food="milk-whole">4 l</ingredient><ingredient id="y" food="yogurt-whole">200 g</ingredient>
<step do="mix" makes="mix">Stir <use of="y">yoghurt</use> into the <use of="m">milk</use> at <food-temp>45 °C</food-temp>.</step>
<step do="hold" unattended="8 h">Hold the <use of="mix">mix</use> at <food-temp>43 °C</food-temp> for
<time>8 h</time>.</step>)")
            .empty());
}

TEST_CASE("garlic under oil needs the cold; a dressing with vinegar, and garlic fried crisp, are let be") {
  const auto oil = [](const std::string& verb, const std::string& more) {
    return said(R"(<ingredient id="g" food="garlic">200 g</ingredient><ingredient id="o" food="oil-olive">1 l</ingredient>
<ingredient id="v" food="vinegar-wine-red">)" + more + R"(</ingredient><step do=")" + verb + R"(">Leave <use of="g">garlic</use>,
<use of="v">vinegar</use> and <use of="o">oil</use>.</step><keep where="dry store" for="21 days"/>)");
  };
  CHECK(oil("infuse", "1 g") ==
        "kept-out-of-the-cold: it stands 21 days out of the cold; food that needs it is out for 4 h at most");
  CHECK(oil("infuse", "300 g") ==
        "need-for-cold-unknown: it stands 21 days out of the cold; whether it needs it is not known: it hangs on how acid it is");
  CHECK(oil("fry", "1 g").empty());
}

TEST_CASE("where the fiche cannot tell whether it needs the cold, the author is asked what would decide it") {
  const auto curd = [](const std::string& end) {
    return said(R"(<ingredient id="c" food="cream-35">400 g</ingredient><ingredient id="j" food="lemon-juice">60 g</ingredient>
<step do="boil" makes="posset">Boil the <use of="c">cream</use> with the <use of="j">juice</use>.</step>)" + end);
  };
  CHECK(curd(R"(<keep where="dry store" for="2 days"/>)") ==
        "need-for-cold-unknown: it stands 2 days out of the cold; whether it needs it is not known: it hangs on how acid it is");
  CHECK(curd(R"(<keep where="dry store" for="3 h"/>)").empty());
  CHECK(curd(R"(<keep where="dry store, in closed jars" for="90 days"/>)").empty());
  CHECK(curd(R"(<keep where="fridge" for="2 days"/>)").empty());
  const std::string relish = R"(<ingredient id="o" food="onion">500 g</ingredient><ingredient id="x" name="house brine powder">80 g</ingredient>
<step do="cook" makes="relish">Cook the <use of="o">onions</use> with the <use of="x">powder</use>.</step>)";
  CHECK(said(relish + R"(<keep where="dry store" for="5 days"/>)") ==
        "need-for-cold-unknown: it stands 5 days out of the cold; whether it needs it is not known: it hangs on a food or an amount "
        "in it that is not known");
  CHECK(said(R"(<ingredient id="o" food="onion">500 g</ingredient>
<step do="peel" makes="peeled">Peel the <use of="o">onions</use>.</step><keep where="dry store" for="5 days"/>)")
            .empty());
}

TEST_CASE("hot food below its limit may wait four hours by the US code, two by the UK's, and is thrown away then") {
  const auto held = [](const std::string& time) {
    return R"(<ingredient id="milk" food="milk-whole">500 g</ingredient>
<ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
<step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>, stirring.</step>
<keep where="water bath" at="50 °C" for=")" + time + R"(">What is left is thrown away.</keep>)";
  };
  CHECK(said(held("4 h")).empty());
  CHECK(said(held("2 h"), "uk").empty());
  CHECK(said(held("4 h"), "uk") == "held-too-cool: it is held at 50 °C; hot holding is at 63 °C or more");
  CHECK(said(held("3 h"), "ontario") == "held-too-cool: it is held at 50 °C; hot holding is at 60 °C or more");
  CHECK(said(held("4 h"), "australia").empty());
  const auto control = [](const std::string& time) {
    return said(R"(<ingredient id="milk" food="milk-whole">500 g</ingredient>
<ingredient id="flour" food="flour-wheat-white">30 g</ingredient>
<step do="boil" makes="sauce" hands="8 min">Boil the <use of="milk">milk</use> with the <use of="flour">flour</use>.</step>
<step do="hold" unattended="1 h">Hold the <use of="sauce">sauce</use>.<control hazard="growth of bacteria" check="probe"
often="every 30 min" who="the cook" record="sheet" action="discard what is left">Kept hot, <food-temp>at least 50
°C</food-temp> for <time>at most )" + time + "</time></control></step>",
                "uk");
  };
  CHECK(control("2 h").find("control-weaker-than-limit") == std::string::npos);
  CHECK(control("3 h").find("control-weaker-than-limit") != std::string::npos);
}

namespace {

std::string thawed(const std::string& step, const std::string& next = "fry", const std::string& food = "cod") {
  return "<ingredient id=\"i\" food=\"" + food + "\" at=\"-18 °C\">1 kg</ingredient>\n" + step + "\n<step do=\"" + next +
         "\" hands=\"8 min\">Go on with the <use of=\"t\">piece</use>.</step>";
}

const std::string the_fish = "makes=\"t\" unattended=\"1 h\">Thaw the <use of=\"i\">fish</use> ";

}  // namespace

TEST_CASE("meat and fish thaw in the fridge, in cold running water, or in a microwave and are cooked at once") {
  CHECK(said(thawed("<step do=\"thaw\" " + the_fish + "in water at <medium-temp of=\"water\">30 °C</medium-temp>.</step>")) ==
        "thawed-too-warm: it thaws in water at 30 °C; water to thaw in runs, at 21 °C or less");
  CHECK(said(thawed("<step do=\"thaw\" " + the_fish + "under running water at <medium-temp of=\"water\">70 °F</medium-temp>.</step>")).empty());
  CHECK(said(thawed("<step do=\"thaw\" " + the_fish + "in warm water.</step>")) ==
        "thawed-too-warm: it thaws in warm water; water to thaw in runs, at 21 °C or less");
  CHECK(said(thawed("<step do=\"thaw\" " + the_fish + "in the microwave.</step>")).empty());
  CHECK(said(thawed("<step do=\"thaw\" " + the_fish + "in the microwave.</step>", "slice")) ==
        "thawed-too-warm: it thaws in the microwave, and the next step does not cook it: its edges are warm by then");
  CHECK(said(thawed("<step do=\"thaw\" on=\"fridge\" " + the_fish + "overnight.</step>", "slice")).empty());
  const std::string bench = "<step do=\"thaw\" on=\"bench\" makes=\"t\" unattended=\"";
  const std::string rest = "\">Thaw the <use of=\"i\">fish</use>.</step>";
  CHECK(said(thawed(bench + "3 h" + rest)) ==
        "thawed-too-warm: it thaws in the room: its outside is as warm as the room long before its middle has thawed");
  CHECK(said(thawed(bench + "40 min" + rest)).empty());
  CHECK(said(thawed(bench + "9 h" + rest)).find("long-in-the-danger-zone") == 0);
  CHECK(said(thawed(bench + "3 h" + rest, "roll", "butter-unsalted")).empty());
  CHECK(said(thawed(bench + "3 h" + rest, "mix", "raspberry")).empty());
}
