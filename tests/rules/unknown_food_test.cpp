#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "tests/rules/checking.h"

using tamis::tests::check_text;

TEST_CASE("a mistyped food gets the foods that hold the word before one that merely looks alike") {
  struct Row {
    const char* food;
    const char* advice;
  };
  const Row row = GENERATE(values<Row>({
      {"buter", "write butter-unsalted, butter-salted or butter-clarified, or add it to the kitchen file as <food>"},
      {"watr", "write water, watermelon or rose-water, or add it to the kitchen file as <food>"},
      {"house-flour", "write flour-wheat-white, or add it to the kitchen file as <food>"},
      {"zzzzzzzz", "look for it with tamis foods, or add it to the kitchen file as <food>"},
  }));
  CAPTURE(row.food);
  const auto checked = check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en"><title>T</title>
<component id="c" title="C"><ingredient food=")" + std::string(row.food) + R"(">9 g</ingredient></component></fiche>)");
  const auto said = std::find_if(checked.findings.begin(), checked.findings.end(),
                                 [](const auto& finding) { return finding.rule == "unknown-food"; });
  REQUIRE(said != checked.findings.end());
  CHECK(said->advice == row.advice);
}
