#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;

namespace {

/// The findings of topic "balance" alone, a space between: what else a bare example lacks is others' to say.
std::string balance_of(const std::string& part, const fiche::Kitchen& kitchen = {}) {
  std::string out;
  for (const base::Finding& finding : check_part(part, kitchen).findings) {
    const rules::Rule* rule = rules::rule_by_id(finding.rule);
    if (rule != nullptr && rule->topic == "balance") out += (out.empty() ? "" : " ") + finding.rule;
  }
  return out;
}

struct Row {
  const char* part;
  const char* said;
};

constexpr const char* lines = R"(<ingredient id="milk" food="milk-whole">500 g</ingredient>
<ingredient id="sugar" food="sugar-white">200 g</ingredient>)";

}  // namespace

TEST_CASE("an ingredient counts as used where a cook would see that it is") {
  const Row rows[] = {
      {R"(<step>Heat the <use of="milk">milk</use>.</step>)", "ingredient-never-used"},
      {R"(<step>Heat the <use of="milk">milk</use> with the sugar.</step>)", ""},   // in plain words
      {R"(<step>Heat everything.</step>)", ""},                                     // a draft without marks
      {R"(<step>Heat the <use of="milk">milk</use>.</step><step>Dust with <use of="suger">it</use>.</step>)", ""},  // mistyped
      {R"(<ingredient food="water" purpose="bath">2 l</ingredient><step>Heat <use of="milk">a</use>, <use of="sugar">b</use>.</step>)", ""},
      {R"(<ingredient food="walnut" optional="yes">50 g</ingredient><step>Heat <use of="milk">a</use>, <use of="sugar">b</use>.</step>)", ""},
      {R"(<ingredient id="egg" food="egg-whole">4<part id="yolk" food="egg-yolk"/></ingredient>
          <step>Whisk <use of="yolk">yolks</use>, <use of="milk">a</use>, <use of="sugar">b</use>.</step>)", ""},
      {R"(<choice><ingredient id="honey" food="honey">20 g</ingredient><ingredient id="malt" food="syrup-maple">20 g</ingredient></choice>
          <step>Heat <use of="milk">a</use>, <use of="sugar">b</use>, <use of="honey">c</use>.</step>)", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(balance_of(std::string(lines) + row.part) == row.said);
  }
}

TEST_CASE("what steps take is added up, but not over branches and what may be left out") {
  const Row rows[] = {
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="150 g">b</use>.</step><step>Add <use of="sugar" take="100 g">c</use>.</step>)",
       "more-used-than-listed"},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="150 g">b</use>.</step><step>Add <use of="sugar" take="55 g">c</use>.</step>)", ""},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="2/3">b</use>.</step><step>Add <use of="sugar" take="1/2">c</use>.</step>)",
       "more-used-than-listed"},
      {R"(<step makes="a">Mix <use of="milk">a</use>.</step><step branch="sweet">Add <use of="sugar" take="200 g">b</use>.</step>
          <step branch="very sweet">Add <use of="sugar" take="200 g">b</use>.</step>)", ""},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="half">b</use>.</step>)", "less-used-than-listed"},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="half">b</use>; keep the rest for dusting.</step>)", ""},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="190 g">b</use>.</step>)", ""},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="half">b</use>.</step><step>Add <use of="sugar" take="half">c</use>.</step>
          <step>Dust with <use of="sugar" take="the rest">d</use>.</step>)", "rest-of-nothing"},
      {R"(<step>Mix <use of="milk">a</use> with <use of="sugar" take="half">b</use>.</step><step optional="yes">Add <use of="sugar" take="half">c</use>.</step>
          <step>Dust with <use of="sugar" take="the rest">d</use>.</step>)", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(balance_of(std::string(lines) + row.part) == row.said);
  }
}

TEST_CASE("what a step makes goes somewhere, once") {
  const Row rows[] = {
      {R"(<step makes="a b">Split <use of="milk">a</use> and <use of="sugar">s</use>.</step><step>Chill <use of="a">a</use>.</step>)", "result-never-used"},
      {R"(<step makes="a b">Split <use of="milk">a</use> and <use of="sugar">s</use>; serve b at once.</step><step>Chill <use of="a">a</use>.</step>)", ""},
      {R"(<step makes="a b">Split <use of="milk">a</use> and <use of="sugar">s</use>.</step><step>Chill <use of="a">a</use>.</step><keep of="b">Cold.</keep>)", ""},
      {R"(<step makes="a">Mix <use of="milk">m</use> and <use of="sugar">s</use>.</step><step makes="x">Chill <use of="a" take="2/3">a</use>.</step>
          <step>Pour <use of="x">x</use> on <use of="a" take="1/2">a</use>.</step>)", "result-used-twice"},
      {R"(<step makes="a">Mix <use of="milk">m</use> and <use of="sugar">s</use>.</step><step makes="x">Chill <use of="a" take="2/3">a</use>.</step>
          <step>Pour <use of="x">x</use> on <use of="a" take="the rest">a</use>.</step>)", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(balance_of(std::string(lines) + row.part) == row.said);
  }
}

TEST_CASE("a yield is held against what is made, with what a kitchen loses") {
  struct Yield {
    const char* yield;
    const char* step;
    const char* said;
  };
  constexpr const char* cold = R"(<step>Whisk <use of="milk">m</use> and <use of="sugar">s</use>.</step>)";  // 700 g
  constexpr const char* hot = R"(<step do="boil" on="hob">Boil <use of="milk">m</use> and <use of="sugar">s</use>.</step>)";
  const Yield rows[] = {
      {R"(<yield mass="700 g"/>)", cold, ""},
      {R"(<yield mass="650 g"/>)", cold, ""},
      {R"(<yield mass="730 g"/>)", cold, ""},
      {R"(<yield mass="750 g"/>)", cold, "total-against-yield"},
      {R"(<yield mass="600 g"/>)", cold, "total-against-yield"},
      {R"(<yield mass="600 g"><loss what="bowl" amount="90 g"/></yield>)", cold, ""},
      {R"(<yield mass="450 g"/>)", hot, ""},
      {R"(<yield mass="400 g"/>)", hot, "total-against-yield"},
      {R"(<yield mass="700 g"><loss what="cooking" amount="30 %"/></yield>)", hot, "total-against-yield"},
      {R"(<yield volume="1 l"/>)", cold, ""},
      {R"(<yield volume="3 l"/>)", cold, "total-against-yield"},
      {R"(<yield portions="7" each="100 g"/>)", cold, ""},
      {R"(<yield portions="7" each="100 g" spare="1"/>)", cold, "portions-against-total"},
      {R"(<yield pieces="7" each="about 110 g"/>)", cold, ""},
      {R"(<yield><mould shape="round" diameter="10 cm" height="5 cm"/></yield>)", cold, "mould-does-not-fit"},  // 393 ml
      {R"(<yield><mould shape="round" diameter="16 cm" height="5 cm"/></yield>)", cold, ""},                    // 1005 ml
      {R"(<yield><mould shape="round" diameter="10 cm" height="5 cm" count="2"/></yield>)", cold, ""},
      {R"(<yield><mould shape="frame" length="36 cm" width="26 cm" height="6 cm" fill="5 cm"/></yield>)", cold, "mould-does-not-fit"},
  };
  for (const Yield& row : rows) {
    CAPTURE(row.yield, row.step);
    CHECK(balance_of(std::string(row.yield) + lines + row.step) == row.said);
  }
}

TEST_CASE("a batch is held against the machine that the kitchen has") {
  const fiche::Kitchen kitchen = tests::kitchen_of(
      R"(<machine id="small" kind="mixer" least="1 l" most="4 l"/><machine id="large" kind="mixer" least="6 l" most="20 l"/>
         <machine id="tiny" kind="blender" most="0.4 l"/>)");
  const auto on = [&](const std::string& machine, const std::string& more) {
    return balance_of(std::string(lines) + "<step on=\"" + machine + R"(">Whisk <use of="milk">m</use> and <use of="sugar">s</use>)" + more + ".</step>", kitchen);
  };
  CHECK(on("small", "") == "");
  CHECK(on("large", "") == "batch-outside-vessel");
  CHECK(on("tiny", "") == "batch-outside-vessel");
  CHECK(on("tiny", ", half a jug at a time") == "");
  CHECK(on("bench", "") == "");
}

TEST_CASE("a batch is held against the least and the most that its yield states", "[rules][balance]") {
  const auto stated = [&](const std::string& bounds) {
    return balance_of("<yield " + bounds + "/>" + std::string(lines) +
                      "<step>Stir the <use of=\"milk\">m</use> and <use of=\"sugar\">s</use>.</step>");
  };
  CHECK(stated("least=\"100 g\" most=\"50 kg\"") == "");
  CHECK(stated("least=\"100 kg\"") == "batch-outside-vessel");
  CHECK(stated("most=\"100 g\"") == "batch-outside-vessel");
}
