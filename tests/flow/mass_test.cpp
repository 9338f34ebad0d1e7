#include <random>

#include "tests/flow/flowing.h"

namespace tamis {
namespace {

using tests::component_of;
using tests::fiche_of;
using tests::flow_of;
using tests::grams_text;

std::string whole_of(const std::string& inside, fiche::Library& library = fiche::empty_library()) {
  return grams_text(flow_of(fiche_of(inside), library)->flow.whole.out);
}
std::string total_of(const std::string& inside) { return whole_of("<component id=\"c\" title=\"C\">" + inside + "</component>"); }

/// Grams of the thing of that name.
std::string mass_of(const std::string& inside, const char* id) {
  const auto flowing = flow_of(component_of(inside));
  const int thing = flowing->flow.thing_named(id);
  REQUIRE(thing >= 0);
  return grams_text(flowing->flow.things[static_cast<std::size_t>(thing)].grams);
}

TEST_CASE("a line weighs what it says, by density and by the piece where it must") {
  struct Row {
    const char* line;  // of an ingredient with id x
    const char* grams;
  };
  // Figures of the food table (core/food/table): egg 50 g, yolk 17 g of it, water 1 g/ml. Whole milk and salt by
  // their cup and spoon.
  const Row rows[] = {
      {R"(<ingredient id="x" food="sugar-white">250 g</ingredient>)", "250"},
      {R"(<ingredient id="x" food="sugar-white">200 to 300 g</ingredient>)", "200-300"},
      {R"(<ingredient id="x" food="sugar-white">about 100 g</ingredient>)", "95-105"},
      {R"(<ingredient id="x" food="water">1.5 l</ingredient>)", "1500"},
      {R"(<ingredient id="x" food="egg-whole">2</ingredient>)", "95-105"},
      {R"(<ingredient id="x" food="egg-whole" pieces="2">100 g</ingredient>)", "100"},
      {R"(<ingredient id="x" food="egg-whole" also="110 g">2</ingredient>)", "110"},
      {R"(<ingredient id="x">2</ingredient>)", "?"},
      {R"(<ingredient id="x">1 l</ingredient>)", "?"},
      {R"(<ingredient id="x" food="salt">to taste</ingredient>)", "?"},
      {R"(<ingredient id="x" food="potato" weighed="bought" prep="peeled">1 kg</ingredient>)", "750-1000"},
      {R"(<ingredient id="x" food="potato" weighed="after" prep="peeled" purchase="1 kg">750 g</ingredient>)", "750"},
      {R"(<ingredient id="x" food="cream-35" weighed="before" prep="whipped soft">500 g</ingredient>)", "500"},
      {R"(<ingredient id="y" food="egg-white">90 g</ingredient><ingredient id="x" food="sugar-white" as-much-as="y" times="2"/>)",
       "180"},
      {R"(<ingredient id="y" food="egg-whole">4</ingredient><ingredient id="x" food="water" as-much-as="y" by="mass" times="1/2"/>)",
       "95-105"},
      {R"(<ingredient id="y" food="water">200 ml</ingredient><ingredient id="x" food="honey" as-much-as="y" by="volume"/>)",
       "285.3-287.85"},  // the table's cup and tablespoon differ
      {R"(<ingredient id="y" food="egg-white">3</ingredient><ingredient id="x" food="egg-yolk" as-much-as="y" by="count"/>)",
       "48.45-53.55"},
      {R"(<ingredient id="y" food="egg-whole">12</ingredient><ingredient id="x" food="water" for-each="y" each="6">500 ml</ingredient>)",
       "1000"},
      {R"(<ingredient id="y" food="pear">1.5 kg</ingredient><ingredient id="x" food="sugar-white" for-each="y" each="1 kg">400 g</ingredient>)",
       "600"},
      {R"(<ingredient id="a" food="sugar-white" as-much-as="x"/><ingredient id="x" food="sugar-white" as-much-as="a"/>)", "?"},
      {R"(<yield portions="8" spare="2"/><ingredient id="x" food="sugar-white" per="portion">5 g</ingredient>)", "50"},
      {R"(<yield><mould count="3"/></yield><ingredient id="x" food="sugar-white" per="mould">5 g</ingredient>)", "15"},
      {R"(<ingredient id="e" food="egg-whole">300 g<part id="x" food="egg-yolk"/></ingredient>)", "102"},  // 17 of 50 g
      {R"(<ingredient id="e" food="pear">300 g<part id="x" share="1/3"/></ingredient>)", "100"},
      {R"(<ingredient id="e" food="pear">300 g<part id="x"/></ingredient>)", "?"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    CHECK(mass_of(row.line, "x") == row.grams);
  }
}

TEST_CASE("a step holds what goes in, less what is said to be lost") {
  struct Row {
    const char* inside;
    const char* total;
  };
  const Row rows[] = {
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><ingredient id="b" food="sugar-white">50 g</ingredient>
          <step>Heat <use of="a">a</use>.</step><step>Add <use of="b">b</use>.</step>)", "250"},
      // Not of the food; a trace.
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><ingredient id="w" food="water" purpose="bath">2 l</ingredient>
          <ingredient id="s" food="salt">to taste</ingredient>
          <step>Heat <use of="a">a</use> over <use of="w">water</use>; <use of="s">salt</use>.</step>)", "200"},
      // Lost in a step, by a share, an amount, a reduction, what is taken out again.
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><step>Boil <use of="a">a</use>.<loss what="pan" amount="10 %"/></step>)", "180"},
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><step>Boil <use of="a">a</use>.<loss what="pan" amount="15 g"/></step>)", "185"},
      {R"(<ingredient id="a" food="stock-chicken">1 kg</ingredient><step reduce-by="3/4">Boil <use of="a">a</use>.</step>)", "250"},
      {R"(<ingredient id="a" food="stock-chicken">1 kg</ingredient><step reduce-to="1/3">Boil <use of="a">a</use>.</step>)", "333.33"},
      {R"(<ingredient id="a" food="stock-chicken">1 kg</ingredient><step reduce-to="400 g">Boil <use of="a">a</use>.</step>)", "400"},
      {R"(<ingredient id="a" food="wine-red">1 kg</ingredient><ingredient id="b" food="shallot">200 g</ingredient>
          <step reduce-by="1/2">Boil <use of="a">a</use> with <use of="b">b</use>.</step>)", "600-700"},
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><ingredient id="b" food="carrot">50 g</ingredient>
          <step>Boil <use of="a">a</use> with <use of="b">b</use>.</step><step removes="b">Take b out.</step>)", "200"},
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><ingredient id="b" food="carrot">50 g</ingredient>
          <step>Boil <use of="a">a</use> with <use of="b">b</use>.</step>
          <step removes="b">Strain.<loss what="straining" amount="60 g"/></step>)", "190"},
      // Yield losses; said in a step too they are the same loss.
      {R"(<yield><loss what="bowl" amount="3 %"/><loss what="trim" amount="20 g"/></yield>
          <ingredient id="a" food="milk-whole">200 g</ingredient><step>Boil <use of="a">a</use>.</step>)", "174"},
      {R"(<yield><loss what="pan" amount="10 %"/></yield><ingredient id="a" food="milk-whole">200 g</ingredient>
          <step>Boil <use of="a">a</use>.<loss what="pan" amount="10 %"/></step>)", "180"},
      // Optional.
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><ingredient id="n" food="walnut" optional="yes">50 g</ingredient>
          <step>Mix <use of="a">a</use> and <use of="n">nuts</use>.</step>)", "200-250"},
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><ingredient id="b" food="water">40 g</ingredient>
          <step makes="s">Cook <use of="a">a</use>.</step>
          <step makes="t" when="it is thick">Thin <use of="s">s</use> with <use of="b">b</use>.</step>
          <step>Strain <use of="s t">it</use>.</step>)", "200-240"},
      // A choice counts its first line; variants each on its own.
      {R"(<choice><ingredient id="a" food="honey">30 g</ingredient><ingredient id="b" food="sugar-white">20 g</ingredient></choice>
          <step>Melt <use of="a b">either</use>.</step>)", "30"},
      {R"(<variant id="v" title="V"><ingredient id="a" food="honey">30 g</ingredient></variant>
          <variant id="w" title="W"><ingredient id="b" food="honey">50 g</ingredient></variant>
          <step>Melt <use of="a b">it</use>.</step>)", "30-50"},
      // Divided, and together again: the whole is known though its parts are not.
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><step makes="c w">Split <use of="a">a</use>.</step>
          <step>Drain.</step><step>Mix <use of="c">c</use> and <use of="w">w</use>.</step>)", "200"},
      {R"(<ingredient id="a" food="milk-whole">200 g</ingredient><step makes="c w">Split <use of="a">a</use>.</step>
          <step>Drink <use of="w">w</use>.</step>)", "?"},
      // A volume of what the fiche makes, and the rest of it: only the parts are uncertain.
      {R"(<ingredient id="a" food="milk-whole">500 g</ingredient><ingredient id="e" food="egg-yolk">100 g</ingredient>
          <step makes="h">Heat <use of="a">a</use>.</step><step makes="t">Temper <use of="e">e</use> with <use of="h" take="100 ml">some</use>.</step>
          <step>Pour <use of="t">t</use> into <use of="h" take="the rest">the rest</use>.</step>)", "600"},
      // Two takers that do not say how much: the whole is known all the same.
      {R"(<ingredient id="a" food="cream-35">200 g</ingredient><ingredient id="s" food="sugar-white">60 g</ingredient><ingredient id="b" food="milk-whole">100 g</ingredient>
          <step makes="x">Whip <use of="a">a</use> with <use of="s">sugar</use>.</step><step makes="y">Heat <use of="b">b</use> with <use of="s">sugar</use>.</step>
          <step>Fold <use of="x">x</use> into <use of="y">y</use>.</step>)", "360"},
      // Filled up to a total.
      {R"(<ingredient id="a" food="pear">200 g<part id="juice" food="orange-juice"/></ingredient><ingredient id="w" food="water" tops-up="juice" to="1 kg"/>
          <step>Press <use of="a">pears</use>.</step><step>Fill the <use of="juice">juice</use> up with <use of="w">water</use>.</step>)", "1000"},
      // The wine has boiled down by the time it is filled up.
      {R"(<ingredient id="a" food="wine-white">400 g</ingredient><ingredient id="b" food="stock-fish">500 g</ingredient>
          <ingredient id="w" food="water" tops-up="a b" to="1 kg"/><step makes="r" reduce-by="3/4">Boil <use of="a">wine</use>.</step>
          <step>Add <use of="b">stock</use> to <use of="r">it</use>, fill up with <use of="w">water</use>.</step>)", "1000"},
      // Its own weight of what comes of a step.
      {R"(<ingredient id="a" food="plum">800 g</ingredient><ingredient id="s" food="sugar-white" as-much-as="pulp"/>
          <step makes="pulp" reduce-to="600 g">Cook <use of="a">fruit</use>.</step><step>Boil <use of="pulp">pulp</use> with <use of="s">sugar</use>.</step>)", "1200"},
      // A component without steps is what it holds.
      {R"(<ingredient id="a" food="plum">800 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient>)", "900"},
      // One unknown makes the whole unknown.
      {R"(<ingredient id="a" food="plum">800 g</ingredient><ingredient id="s" food="sugar-white"/>
          <step>Boil <use of="a">a</use> with <use of="s">s</use>.</step>)", "?"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.inside);
    CHECK(total_of(row.inside) == row.total);
  }
}

TEST_CASE("shares of a thing come to what it is") {
  const auto flowing = flow_of(component_of(R"(<ingredient id="s" food="sugar-white">300 g</ingredient>
      <ingredient id="m" food="milk-whole">100 g</ingredient>
      <step makes="a">Melt <use of="s" take="1/3">a third</use>.</step>
      <step makes="b">Mix <use of="m">milk</use> with <use of="s" take="50 g">50 g</use>.</step>
      <step>Whip <use of="s" take="the rest">the rest</use> into <use of="a">a</use> and <use of="b">b</use>.</step>)"));
  std::string grams;
  const int sugar = flowing->flow.thing_named("s");
  for (const int use : flowing->flow.things[static_cast<std::size_t>(sugar)].uses) {
    grams += grams_text(flowing->flow.uses[static_cast<std::size_t>(use)].grams) + " ";
  }
  CHECK(grams == "100 50 150 ");
  CHECK(grams_text(flowing->flow.whole.out) == "400");
}

TEST_CASE("a whole is its components, each counted once, less what the yield says is lost") {
  const std::string sponge = R"(<component id="sponge" title="S"><yield><loss what="trim" amount="20 g"/></yield>
      <ingredient id="e" food="egg-white">120 g</ingredient><step makes="disc">Whip <use of="e">e</use>.</step></component>)";
  const std::string cream = R"(<component id="cream" title="C"><ingredient id="m" food="milk-whole">300 g</ingredient>
      <step makes="set">Set <use of="m">m</use>.</step></component>)";
  struct Row {
    std::string inside;
    const char* whole;
  };
  const Row rows[] = {
      {sponge + cream, "400"},
      {sponge + cream + R"(<component id="l" title="L"><step>Lay <use of="sponge">s</use>, pour <use of="set">c</use>.</step></component>)", "400"},
      {sponge + cream + R"(<component id="l" title="L"><step>Lay <use of="disc">s</use>, pour <use of="set">c</use>.</step></component>)", "400"},
      {sponge + cream + R"(<component id="l" title="L"><step>Assemble.</step></component>)", "400"},
      {"<yield><loss what=\"frame\" amount=\"10 %\"/></yield>" + sponge + cream, "360"},
      {sponge + R"(<component id="c2" title="C" optional="yes"><ingredient id="m" food="milk-whole">300 g</ingredient></component>)", "100-400"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.inside);
    CHECK(whole_of(row.inside) == row.whole);
  }
}

TEST_CASE("a component of another file weighs what that file makes of it, with what is changed here") {
  tests::FlowLibrary library;
  library.texts["base.xml"] = fiche_of(R"(<yield mass="300 g"/><component id="cream" title="C">
      <ingredient id="m" food="milk-whole">200 g</ingredient><ingredient id="s" food="sugar-white">100 g</ingredient>
      <step>Boil <use of="m">m</use> with <use of="s">s</use>.</step></component>)");
  library.texts["round.xml"] = fiche_of(R"(<component id="x" title="X" from="test.xml#c"/>)");
  struct Row {
    const char* component;
    const char* whole;
  };
  const Row rows[] = {
      {R"(<component id="c" title="C" from="base.xml#cream"/>)", "300"},
      {R"(<component id="c" title="C" from="base.xml"/>)", "300"},
      {R"(<component id="c" title="C" from="base.xml#cream" take="1/2"/>)", "150"},
      {R"(<component id="c" title="C" from="base.xml#cream" take="120 g"/>)", "120"},
      {R"(<component id="c" title="C" from="base.xml#cream"><override ingredient="s">50 g</override></component>)", "250"},
      {R"(<component id="c" title="C" from="base.xml#cream"><ingredient id="n" food="walnut">30 g</ingredient>
          <step>Stir in <use of="n">nuts</use>.</step></component>)", "330"},
      {R"(<component id="c" title="C" from="base.xml#cream" take="40 g"/><component id="d" title="D"><step>Use <use of="c">it</use>.</step></component>)",
       "40"},
      {R"(<component id="c" title="C" from="base.xml#none"/>)", "?"},
      {R"(<component id="c" title="C" from="none.xml"/>)", "?"},
      {R"(<component id="c" title="C" from="round.xml#x"/>)", "?"},
  };
  library.texts["test.xml"] = fiche_of(R"(<component id="c" title="C" from="round.xml#x"/>)");
  for (const Row& row : rows) {
    CAPTURE(row.component);
    CHECK(whole_of(row.component, library) == row.whole);
  }
  library.opened = 0;
  const auto round = flow_of(library.texts["test.xml"], library, "test.xml");
  CHECK_FALSE(round->flow.whole.out);
  CHECK(library.opened <= 2);
}

/// A fiche of some components with plain figures, each times a factor.
std::string random_fiche(std::uint32_t seed, int factor) {
  std::mt19937 random(seed);
  const auto pick = [&](int least, int most) { return std::uniform_int_distribution<int>(least, most)(random); };
  const auto grams = [&](int figure) { return std::to_string(figure * factor) + " g"; };
  std::string out;
  const int components = pick(1, 3);
  for (int c = 0; c < components; ++c) {
    const std::string name = "c" + std::to_string(c);
    out += "<component id=\"" + name + "\" title=\"T\">";
    if (pick(0, 1) != 0) out += "<yield><loss what=\"bowl\" amount=\"" + std::to_string(pick(1, 9)) + " %\"/></yield>";
    const int ingredients = pick(1, 5);
    for (int i = 0; i < ingredients; ++i) {
      const std::string id = name + "i" + std::to_string(i);
      out += "<ingredient id=\"" + id + "\" food=\"sugar-white\"" + (pick(0, 5) == 0 ? " optional=\"yes\"" : "");
      if (i > 0 && pick(0, 4) == 0) {
        out += " as-much-as=\"" + name + "i0\" times=\"1/" + std::to_string(pick(1, 4)) + "\"/>";
      } else {
        out += ">" + grams(pick(5, 400)) + (pick(0, 3) == 0 ? "<part id=\"" + id + "p\" share=\"1/2\"/>" : "") + "</ingredient>";
      }
    }
    std::string last;
    for (int i = 0; i < ingredients; ++i) {
      const std::string id = name + "i" + std::to_string(i);
      const std::string made = name + "r" + std::to_string(i);
      out += "<step" + (pick(0, 1) != 0 ? " makes=\"" + made + "\"" : std::string()) +
             (pick(0, 4) == 0 ? " reduce-by=\"1/4\"" : "") + (pick(0, 6) == 0 ? " optional=\"yes\"" : "") + ">Mix ";
      const int how = pick(0, 4);
      const std::string take = how == 0 ? " take=\"1/2\"" : how == 1 ? " take=\"" + grams(pick(1, 5)) + "\"" : "";
      out += "<use of=\"" + id + "\"" + take + ">x</use>";
      if (!take.empty()) out += " and <use of=\"" + id + "\" take=\"the rest\">the rest</use>";
      if (i > 0 && pick(0, 2) == 0) out += " and <use of=\"" + name + "i0\">more</use>";
      if (pick(0, 5) == 0) out += "<loss what=\"pan\" amount=\"" + grams(1) + "\"/>";
      out += "</step>";
    }
    out += "</component>";
  }
  return fiche_of(out);
}

TEST_CASE("scaling every amount scales every mass") {
  int known = 0;
  for (std::uint32_t seed = 1; seed <= 300; ++seed) {
    const auto once = flow_of(random_fiche(seed, 1));
    const auto seven = flow_of(random_fiche(seed, 7));
    CAPTURE(seed);
    REQUIRE(once->flow.uses.size() == seven->flow.uses.size());
    const auto same = [&](const std::optional<flow::Grams>& a, const std::optional<flow::Grams>& b) {
      REQUIRE(a.has_value() == b.has_value());
      if (!a) return;
      CHECK(b->low == Approx(7 * a->low).margin(1e-6));
      CHECK(b->high == Approx(7 * a->high).margin(1e-6));
    };
    for (std::size_t i = 0; i < once->flow.things.size(); ++i) same(once->flow.things[i].grams, seven->flow.things[i].grams);
    for (std::size_t i = 0; i < once->flow.uses.size(); ++i) same(once->flow.uses[i].grams, seven->flow.uses[i].grams);
    for (std::size_t i = 0; i < once->flow.steps.size(); ++i) same(once->flow.steps[i].out, seven->flow.steps[i].out);
    same(once->flow.whole.out, seven->flow.whole.out);
    known += once->flow.whole.out.has_value() ? 1 : 0;
    const auto& whole = once->flow.whole.out;
    if (whole) CHECK(whole->low <= whole->high);
  }
  CHECK(known > 200);
}

}  // namespace
}  // namespace tamis
