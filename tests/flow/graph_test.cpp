#include "tests/flow/flowing.h"

namespace tamis {
namespace {

using tests::component_of;
using tests::fiche_of;
using tests::flow_of;
using tests::graph_text;

constexpr const char* list = R"(<ingredient id="milk" food="milk-whole">200 g</ingredient>
<ingredient id="yolks" food="egg-yolk">60 g</ingredient>
<ingredient id="sugar" food="sugar-white">50 g</ingredient>
<ingredient id="leaf" food="gelatine-leaf">4 g</ingredient>
<ingredient id="cream" food="cream-35">150 g</ingredient>
)";

struct Row {
  const char* steps;
  const char* graph;
};

TEST_CASE("a step goes on with what the step before it made, unless it starts afresh") {
  const Row rows[] = {
      // Unnamed results are carried.
      {R"(<step>Heat the <use of="milk">milk</use>.</step><step>Whisk in the <use of="sugar">sugar</use>.</step>)",
       "0: milk > ·; 1<0: +· sugar > ·"},
      // A name that nobody takes elsewhere does not stop it, and stays.
      {R"(<step makes="base">Heat the <use of="milk">milk</use>.</step><step>Add the <use of="sugar">sugar</use>.</step>
          <step>Chill.</step>)",
       "0: milk > base; 1<0: +base sugar > base'; 2<1: +base' > base'"},
      // A name that a later step takes does: the step between starts afresh.
      {R"(<step makes="base">Heat the <use of="milk">milk</use>.</step><step>Whip the <use of="cream">cream</use>.</step>
          <step>Fold into the <use of="base">base</use>.</step>)",
       "0: milk > base; 1: cream > ·; 2<1: +· base > · | 0 1"},
      // Without a mark it goes on whatever the name, and the later step takes what came of it.
      {R"(<step makes="base">Heat the <use of="milk">milk</use>.</step><step>Chill it.</step>
          <step makes="whipped">Whip the <use of="cream">cream</use>.</step>
          <step>Fold the <use of="whipped">cream</use> into the <use of="base">base</use>.</step>)",
       "0: milk > base; 1<0: +base > base'; 2: cream > whipped; 3<2: whipped base' > · | 1 2"},
      // Taken by name alone, it keeps the name.
      {R"(<step makes="base">Heat the <use of="milk">milk</use>.</step><step>Chill the <use of="base">base</use>.</step>
          <step makes="mousse">Fold the <use of="cream">cream</use> into the <use of="base">base</use>.</step>)",
       "0: milk > base; 1<0: base > base'; 2<1: cream base' > mousse"},
      // One part of what the step before made: the other is let be.
      {R"(<step makes="curds whey">Split the <use of="milk">milk</use>.</step>
          <step makes="drink">Sweeten the <use of="whey">whey</use> with the <use of="sugar">sugar</use>.</step>
          <step>Mix the <use of="curds">curds</use> and the <use of="cream">cream</use>.</step>)",
       "0: milk > curds whey; 1<0: whey sugar > drink; 2<1: +drink curds cream > drink' | 0 1"},
      // Both parts are carried where nothing is said.
      {R"(<step makes="curds whey">Split the <use of="milk">milk</use>.</step><step>Cool.</step>)",
       "0: milk > curds whey; 1<0: +curds +whey > curds' whey'"},
      // An oven is heated beside the work; who bakes waits for it.
      {R"(<step do="preheat">Heat the oven.</step><step>Mix the <use of="milk">milk</use>.</step>
          <step do="bake">Bake.</step>)",
       "0: aside; 1: milk > ·; 2<1: +· > · | 0 1"},
      // A step that handles nothing is no work to go on with.
      {R"(<step>Have all at room temperature.</step><step>Mix the <use of="milk">milk</use>.</step>)",
       "0: aside; 1: milk > ·"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.steps);
    CHECK(graph_text(*flow_of(component_of(std::string(list) + row.steps))) == row.graph);
  }
}

TEST_CASE("what is prepared aside is passed over by the step that goes on") {
  const Row rows[] = {
      {R"(<step do="soak">Soak the <use of="leaf">gelatine</use>.</step>
          <step>Cook the <use of="milk">milk</use> and <use of="yolks">yolks</use>.</step>
          <step>Melt in the <use of="leaf">gelatine</use>.</step>)",
       "0: leaf > leaf'; 1: milk yolks > ·; 2<1: +· leaf' > · | 0 1"},
      {R"(<step>Cook the <use of="milk">milk</use> and <use of="yolks">yolks</use>.</step>
          <step>Whip the <use of="cream">cream</use>.</step><step>Fold in the <use of="cream">cream</use>.</step>)",
       "0: milk yolks > ·; 1: cream > cream'; 2<0: +· cream' > · | 0 1"},
      // Taken again by the next as a way of speaking: it is in there already.
      {R"(<step>Melt the <use of="sugar">sugar</use>.</step><step>Deglaze with the <use of="milk">milk</use>.</step>
          <step>Pour the <use of="milk">milk</use> over the <use of="yolks">yolks</use>.</step>)",
       "0: sugar > ·; 1: milk > milk'; 2<0: +· milk' yolks > · | 0 1"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.steps);
    CHECK(graph_text(*flow_of(component_of(std::string(list) + row.steps))) == row.graph);
  }
}

TEST_CASE("a thing spoken of again is not taken again") {
  const Row rows[] = {
      {R"(<step>Cook the <use of="milk">milk</use> with the <use of="sugar">sugar</use>.</step>
          <step>Pour the <use of="milk">milk</use> over the <use of="yolks">yolks</use>.</step>)",
       "0: milk sugar > ·; 1<0: +· yolks > ·"},
      {R"(<step>Heat the <use of="milk">milk</use>; stir the <use of="milk">milk</use>.</step>)", "0: milk > ·"},
      {R"(<step>Of the <use of="milk">milk</use>, take <use of="milk" take="1/2">half</use>.</step>
          <step>Add <use of="milk" take="the rest">the rest</use>.</step>)",
       "0: milk > ·; 1<0: +· milk > ·"},
      {R"(<step>Heat the <use of="milk">milk</use>.<gate of="milk">The <use of="yolks">yolks</use> are ready.</gate>
          <why>The <use of="sugar">sugar</use> comes later.</why></step>)",
       "0: milk > ·"},
      // Two steps that do not hold each other's work: neither says how much.
      {R"(<step makes="a">Whip the <use of="cream">cream</use> with the <use of="sugar">sugar</use>.</step>
          <step makes="b">Heat the <use of="milk">milk</use> with the <use of="sugar">sugar</use>.</step>
          <step>Fold <use of="a">one</use> into <use of="b">the other</use>.</step>)",
       "0: cream sugar? > a; 1: milk sugar? > b; 2<1: a b > · | 0 1"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.steps);
    CHECK(graph_text(*flow_of(component_of(std::string(list) + row.steps))) == row.graph);
  }
}

TEST_CASE("of several ids in one mark, those that stand for each other count once") {
  const Row rows[] = {
      // An optional step's result and what it was made of.
      {R"(<step makes="sauce">Cook the <use of="milk">milk</use>.</step>
          <step optional="yes" makes="thinned">Thin the <use of="sauce">sauce</use> with <use of="cream">cream</use>.</step>
          <step>Season the <use of="sauce thinned">sauce</use>.</step>)",
       "0: milk > sauce; 1<0: sauce cream > thinned; 2<1: sauce /thinned > · | 0 1"},
      // Branches.
      {R"(<step makes="hot">Cook the <use of="milk">milk</use>.</step>
          <step branch="rare" makes="rare">Take the <use of="hot">roast</use> out.</step>
          <step branch="well" makes="well">Leave the <use of="hot">roast</use> in.</step>
          <step>Rest the <use of="rare well">roast</use>.</step>)",
       "0: milk > hot; 1<0: hot > rare; 2<0: hot > well; 3<2: rare /well > · | 1 2"},
      {R"(<step>Cook the <use of="milk">milk</use>.</step><step branch="hot">Keep hot.</step>
          <step branch="cold">Chill.</step><step>Serve.</step>)",
       "0: milk > ·; 1<0: +· > ·; 2<0: +· > ·; 3<2: +· > · | 1 2"},
      // A choice.
      {R"(<choice><ingredient id="honey" food="honey">20 g</ingredient><ingredient id="maple" food="syrup-maple">20 g</ingredient></choice>
          <step>Heat the <use of="milk">milk</use> and the <use of="honey maple">honey or syrup</use>.</step>)",
       "0: milk honey /maple > ·"},
      // Both parts of a lemon go in.
      {R"(<ingredient id="lemon" food="lemon">1<part id="juice" food="lemon-juice"/><part id="zest" food="lemon-zest"/></ingredient>
          <step>Peel the <use of="lemon">lemon</use>.</step>
          <step>Add the <use of="juice zest">juice and zest</use> to the <use of="milk">milk</use>.</step>)",
       "0: lemon > ·; 1: juice zest milk > · | 0"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.steps);
    CHECK(graph_text(*flow_of(component_of(std::string(list) + row.steps))) == row.graph);
  }
}

TEST_CASE("an ingredient without a mark goes in where the words name it, or at the start of a draft") {
  const Row rows[] = {
      {"<step>Whisk everything.</step><step>Chill.</step>", "0: ~milk ~yolks ~sugar ~leaf ~cream > ·; 1<0: +· > ·"},
      {R"(<step>Heat the <use of="milk">milk</use> and sugar.</step><step>Beat in the egg yolks.</step>
          <step>Melt in the gelatine leaf, fold in the cream.</step>)",
       "0: milk ~sugar > ·; 1<0: +· ~yolks > ·; 2<1: +· ~leaf ~cream > ·"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.steps);
    CHECK(graph_text(*flow_of(component_of(std::string(list) + row.steps))) == row.graph);
  }
}

TEST_CASE("components are taken by name, through their results, or by a last one that says nothing") {
  const std::string sponge = R"(<component id="sponge" title="Sponge"><ingredient id="egg" food="egg-whole">100 g</ingredient>
      <step>Whip the <use of="egg">egg</use>.</step></component>)";
  const std::string cream = R"(<component id="cream" title="Cream"><ingredient id="milk" food="milk-whole">100 g</ingredient>
      <step makes="mousse">Set the <use of="milk">milk</use>.</step></component>)";
  const Row rows[] = {
      {R"(<step>Lay the <use of="sponge">sponge</use>, pour the <use of="mousse">cream</use>.</step>)",
       "0: egg > ·; 1: milk > mousse; 2: sponge mousse > · | 0 1"},
      {R"(<step>Assemble.</step><step>Chill.</step>)", "0: egg > ·; 1: milk > mousse; 2: ~sponge ~cream > · | 0 1; 3<2: +· > ·"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.steps);
    const auto flowing = flow_of(fiche_of(sponge + cream + "<component id=\"last\" title=\"L\">" + row.steps + "</component>"));
    CHECK(graph_text(*flowing) == row.graph);
    CHECK(flowing->flow.components[0].taken);
    CHECK(flowing->flow.components[1].taken);
    CHECK_FALSE(flowing->flow.components[2].taken);
  }
}

TEST_CASE("the order keeps the document's where it can, and a circle is shown") {
  const auto late = flow_of(component_of(std::string(list) +
      R"(<step makes="b">Pour over the <use of="a">base</use>.</step><step makes="a">Boil the <use of="milk">milk</use>.</step>
         <step>Chill the <use of="b">bowl</use>.</step>)"));
  CHECK(late->flow.order == std::vector<int>{1, 0, 2});
  CHECK(late->flow.circle.empty());
  const auto circle = flow_of(fiche_of(
      R"(<component id="x" title="X"><step makes="a">Mix <use of="b">it</use>.</step></component>
         <component id="y" title="Y"><step makes="b">Mix <use of="a">it</use>.</step><step>Cool.</step></component>)"));
  CHECK(circle->flow.order.empty());
  CHECK(circle->flow.circle == std::vector<int>{0, 1});
}

TEST_CASE("what comes back as an ingredient waits for the step that makes it, unless that is of the batch before") {
  const auto syrup = flow_of(component_of(R"(<ingredient id="pear" food="pear">500 g</ingredient>
      <ingredient id="back" result="syrup">100 g</ingredient>
      <step makes="soft syrup">Poach the <use of="pear">pears</use>.</step>
      <step>Reduce the <use of="back">syrup</use>.</step>)"));
  CHECK(graph_text(*syrup) == "0: pear > soft syrup; 1<0: +soft +syrup back > soft' syrup'");
  const auto starter = flow_of(component_of(R"(<ingredient id="mother" result="levain">50 g</ingredient>
      <ingredient id="flour" food="flour-wheat-white">100 g</ingredient>
      <step>Feed the <use of="mother">starter</use> with the <use of="flour">flour</use>.</step>
      <step makes="levain loaf">Keep a piece.</step>)"));
  CHECK(starter->flow.circle.empty());
  CHECK(graph_text(*starter) == "0: mother flour > ·; 1<0: +· > levain loaf");
}

TEST_CASE("things are found by their element and by their name") {
  const auto flowing = flow_of(component_of(std::string(list) + R"(<step makes="base">Heat the <use of="milk">milk</use>.</step>)"));
  const flow::Flow& flow = flowing->flow;
  CHECK(flow.thing_named("nothing") == -1);
  REQUIRE(flow.thing_named("base") >= 0);
  CHECK(flow.things[static_cast<std::size_t>(flow.thing_named("base"))].maker == 0);
  for (const fiche::Ingredient& ingredient : flowing->fiche.ingredients) {
    const int thing = flow.thing_of(ingredient.node);
    REQUIRE(thing >= 0);
    CHECK(thing == flow.thing_named(ingredient.id));
  }
  CHECK(flow.step_of(flow.steps[0].node) == 0);
  CHECK(flow.step_of(flowing->document->root()) == -1);
}

}  // namespace
}  // namespace tamis
