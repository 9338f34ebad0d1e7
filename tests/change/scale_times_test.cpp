#include <catch2/catch.hpp>

#include "tests/change/scaling.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

std::string in_rings(const std::string& step, const std::string& food = "milk-whole") {
  return with_yield(
      "<yield portions=\"8\"><mould shape=\"ring\" count=\"2\" diameter=\"26 cm\" height=\"3 cm\" fill=\"3 "
      "cm\"/></yield>",
      "<ingredient id=\"i\" food=\"" + food +
          "\">300 g</ingredient><step do=\"pour\" makes=\"p\">Pour the <use of=\"i\">mix</use> into "
          "the rings.</step>" +
          step);
}

std::string in_a_loaf(const std::string& step) {
  return with_yield(
      "<yield portions=\"8\"><mould shape=\"loaf\" length=\"25 cm\" width=\"10 cm\" height=\"8 cm\"/></yield>",
      "<ingredient id=\"i\" food=\"pork-shoulder\">1.6 kg</ingredient><step do=\"fill\" makes=\"p\">Fill the "
      "mould with the "
      "<use of=\"i\">meat</use>.</step>" +
          step);
}

std::string of_a_joint(const std::string& line) {
  return fiche_around(line +
                      "<step do=\"roast\" on=\"oven\">Roast the <use of=\"i\">meat</use> at <oven-temp "
                      "mode=\"fan\">160 °C</oven-temp> for "
                      "<time>90 min</time>, to <food-temp place=\"core\">58 °C</food-temp>.</step>");
}

std::string said(const Result& made) { return with_spaces(message_of(made.finding("time-not-scaled"))); }

}  // namespace

TEST_CASE("a time for another depth says what it was for, what it takes now, and what decides") {
  const Result custard =
      scaled(in_rings("<step do=\"bake\" on=\"oven\">Bake the <use of=\"p\">cream</use> at <oven-temp "
                      "mode=\"fan\">100 °C</oven-temp> for "
                      "<time>40 to 50 min</time>, to <food-temp place=\"core\">82 °C</food-temp>.</step>"),
             by_portions("10"));
  CHECK(said(custard) == "the time, 40 to 50 min, is for 3 cm; at 2.5 cm it takes about 30 to 40 min");
  REQUIRE(custard.finding("time-not-scaled") != nullptr);
  CHECK(with_spaces(custard.finding("time-not-scaled")->advice) ==
        "look from 25 min on and go by the core, 82 °C; the fiche keeps the author's time");
  CHECK(custard.xml.find("<time>40 to 50 min</time>") != std::string::npos);
}

TEST_CASE("a crumb is told more widely, from the depth to its square") {
  const std::string step =
      "<step do=\"bake\" on=\"oven\">Bake the <use of=\"p\">batter</use> at <oven-temp mode=\"fan\">160 "
      "°C</oven-temp> for <time>60 "
      "min</time>, <until>until a needle comes out clean</until>.</step>";
  const Result crumb = scaled(in_rings(step, "flour-wheat-white"), by_portions("10"));
  CHECK(said(crumb) == "the time, 60 min, is for 3 cm; at 2.5 cm it takes about 40 to 50 min");
  REQUIRE(crumb.finding("time-not-scaled") != nullptr);
  CHECK(with_spaces(crumb.finding("time-not-scaled")->advice)
            .find("the author's sign, \"until a needle comes out clean\"") != std::string::npos);
  CHECK(crumb.finding("time-not-scaled")->source.find("steam") != std::string::npos);
}

TEST_CASE("in the cold, only what is to lie deeper takes longer than the fiche says") {
  const std::string step =
      "<step do=\"chill\" on=\"fridge\" unattended=\"2 h\">Chill the <use of=\"p\">cream</use>.</step>";
  CHECK(scaled(in_rings(step), by_portions("10")).finding("time-not-scaled") == nullptr);
  const Result deeper = scaled(in_a_loaf(step), {ScaleWish::By::mould, "loaf 35 × 13 × 10 cm", ""});
  CHECK(said(deeper) == "the time, 2 h, is for the author's mould; in this one it takes about 2 h 45 min");
}

TEST_CASE("a longer loaf of the same section keeps its time, a thicker one does not") {
  const std::string own = in_a_loaf(
      "<step do=\"bake\" on=\"oven\">Bake the <use of=\"p\">terrine</use> at <oven-temp mode=\"fan\">140 "
      "°C</oven-temp> for "
      "<time>75 to 90 min</time>.</step>");
  CHECK(scaled(own, {ScaleWish::By::mould, "loaf 30 × 10 × 8 cm", ""}).finding("time-not-scaled") == nullptr);
  CHECK(said(scaled(own, {ScaleWish::By::mould, "loaf 35 × 13 × 10 cm", ""})) ==
        "the time, 75 to 90 min, is for the author's mould; in this one it takes about 1 h 50 min to 2 h 30 min");
}

TEST_CASE("a heavier joint takes between the third root of its mass and that root's square") {
  const Result made =
      scaled(of_a_joint("<ingredient id=\"i\" food=\"lamb-leg\">2 kg</ingredient>"), by_factor("2"));
  CHECK(said(made) ==
        "the batch is 2 times the author's, and the fiche names no mould: the time holds for pieces of the "
        "author's size; "
        "one so much larger takes about 1 h 55 min to 2 h 30 min");
  CHECK(scaled(of_a_joint("<ingredient id=\"i\" food=\"duck-breast\" pieces=\"4\">1.4 kg</ingredient>"),
               by_factor("2"))
            .finding("time-not-scaled") == nullptr);
}

TEST_CASE("what is divided into portions, or lies as deep as the author says, keeps its time in the cold") {
  const auto cooled = [](const std::string& words) {
    return scaled(fiche_around("<ingredient id=\"i\" food=\"milk-whole\">1 l</ingredient><step do=\"cool\" "
                               "on=\"fridge\" unattended=\"40 min\">" +
                               words + "</step>"),
                  by_factor("3"));
  };
  CHECK(said(cooled("Cool the <use of=\"i\">milk</use>.")) ==
        "the time, 40 min, is for the author's batch; 3 times as much in one vessel of the same form takes about "
        "60 to 85 min");
  CHECK(cooled("Pour the <use of=\"i\">milk</use> <length>2 cm</length> deep and cool it.").findings.empty());
  CHECK(cooled("Pour 50 g of the <use of=\"i\">milk</use> into each glass and cool.").findings.empty());
}
