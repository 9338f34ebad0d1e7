#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;
using tests::kitchen_of;

namespace {

struct Row {
  const char* part;
  const char* expected;
};
constexpr Row rows[] = {
#include "tests/rules/measure_rows.inc"
};

}  // namespace

TEST_CASE("faults of measures are said once, at their place, with the figures") {
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(check_part(row.part).lines() == row.expected);
  }
}

TEST_CASE("a range is turned round where it stands") {
  struct Turned {
    const char* part;
    const char* mended;
  };
  const Turned row = GENERATE(values<Turned>({
      {R"(<step>Cook to <food-temp>84–82 °C</food-temp>.</step>)", "<food-temp>82–84 °C</food-temp>"},
      {R"(<step hands="20 to 15 min">Mix.</step>)", "hands=\"15 to 20 min\""},
      {R"(<step>Rest <time>1 h to 20 min</time>.</step>)", "<time>20 min to 1 h</time>"},
      {R"(<ingredient food="salt">12 - 10 g</ingredient>)", ">10 - 12 g<"},
  }));
  CAPTURE(row.part);
  const tests::Checked checked = check_part(row.part);
  REQUIRE(checked.rules() == "reversed-range");
  REQUIRE(checked.findings[0].edits.size() == 1);
  CHECK(tests::mended(checked).find(row.mended) != std::string::npos);
}

TEST_CASE("one undeclared system is one fault, with the other places beside it") {
  const tests::Checked checked = tests::check_text(
      R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en"><title>T</title><component id="c" title="C">
<ingredient food="milk-whole">2 cups</ingredient>
<ingredient food="cream-35">1 cup</ingredient>
<ingredient food="salt">1 tsp</ingredient></component></fiche>)");
  REQUIRE(checked.rules() == "ambiguous-unit");
  CHECK(checked.findings[0].related.size() == 2);
}

TEST_CASE("oven figures are held against the kitchen's own ovens") {
  const fiche::Kitchen low = kitchen_of(R"(<oven id="a" mode="fan" least="50 °C" most="260 °C"/>)");
  const fiche::Kitchen high = kitchen_of(R"(<oven id="a" mode="deck" least="80 °C" most="400 °C"/>)");
  const std::string at_350 = R"(<step>Bake at <oven-temp mode="static">350 °C</oven-temp>.</step>)";
  CHECK(check_part(at_350, low).lines() ==
        "4:40 other-scale-suspected: 350 °C is hotter than this kitchen's ovens go (260 °C); 350 °F would be 177 °C\n");
  CHECK(check_part(at_350, high).lines() == "");
}

TEST_CASE("figures twice apart are errors, unless the kitchen says otherwise") {
  const std::string twice = R"(<ingredient food="gelatine-leaf" also="1 oz">9 g</ingredient>)";
  REQUIRE(check_part(twice).rules() == "two-systems-disagree");
  CHECK(check_part(twice).findings[0].severity == base::Severity::error);
  CHECK(check_part(R"(<ingredient food="butter-unsalted" also="8 oz">250 g</ingredient>)").findings.at(0).severity ==
        base::Severity::warning);
  fiche::Kitchen kitchen;
  kitchen.severities["two-systems-disagree"] = base::Severity::advice;
  CHECK(check_part(twice, kitchen).findings.at(0).severity == base::Severity::advice);
}

TEST_CASE("a disagreement points at the other statement") {
  const tests::Checked checked = check_part(R"(<ingredient food="sugar-white" also="250 ml">400 g</ingredient>)");
  REQUIRE(checked.rules() == "mass-and-volume-disagree");
  CHECK(checked.marked() == "250 ml");
  REQUIRE(checked.findings[0].related.size() == 1);
  CHECK(checked.source->slice(checked.findings[0].related[0].where) == "400 g");
}

TEST_CASE("a stale conversion silences the comparison of its other figures") {
  CHECK(check_part(R"(<ingredient food="butter-unsalted" was="200 g" also="200 g">9 oz</ingredient>)").rules() ==
        "stale-conversion");
}

TEST_CASE("oven modes and trade words are asked for once") {
  const tests::Checked ovens = check_part(R"(<step>Bake at <oven-temp>180 °C</oven-temp>.</step>
<step>Then at <oven-temp>160 °C</oven-temp>.</step>)");
  REQUIRE(ovens.rules() == "oven-mode-not-stated");
  CHECK(ovens.findings[0].related.size() == 1);
  const tests::Checked words = check_part(R"(<step>Chill <time>overnight</time>.</step>
<step>Rest <time>overnight</time>.</step>)");
  REQUIRE(words.rules() == "trade-word-without-meaning");
  CHECK(words.findings[0].related.size() == 1);
}
