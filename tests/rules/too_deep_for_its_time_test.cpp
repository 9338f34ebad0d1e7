#include <catch2/catch.hpp>

#include <string>

#include "tests/rules/checking.h"

namespace {

/// What the rule says of a starch cream at 85 °C that is chilled so.
std::string said(const std::string& step, const std::string& kitchen = "") {
  const std::string fiche = R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en"><title>T</title><component id="c" title="C">
<ingredient id="milk" food="milk-whole" at="85 °C">1 l</ingredient><ingredient id="starch" food="starch-maize">80 g</ingredient>
<step do="mix" makes="cream" hands="2 min">Whisk the <use of="starch">starch</use> into the <use of="milk">milk</use>.</step>
)" + step + "</component></fiche>";
  const auto checked = tamis::tests::check_text(fiche, tamis::tests::kitchen_of(kitchen));
  for (const auto& finding : checked.findings)
    if (finding.rule == "too-deep-for-its-time") return finding.message + " → " + finding.advice;
  return "";
}

std::string chilled(const std::string& on, const std::string& depth, const std::string& time, const std::string& words = "chill") {
  return "<step do=\"chill\" on=\"" + on + "\" unattended=\"" + time + "\">Pour the <use of=\"cream\">cream</use> <length>" + depth +
         "</length> deep and " + words + " to <food-temp place=\"core\">10 °C</food-temp>.</step>";
}

}  // namespace

TEST_CASE("a cream that lies too deep for its time is told with its figures and the way out") {
  CHECK(said(chilled("fridge", "5 cm", "30 min")) ==
        "in 30 min it comes from 83 °C to 73 °C at best, not to 10 °C: 5 cm deep in a fridge it takes 5 h 45 min at the least, "
        "9 h 15 min as a rule → give it 9 h 15 min, or cool it in ice or a blast chiller");
  CHECK(said(chilled("ice", "4 cm", "30 min")) ==
        "in 30 min it comes from 83 °C to 22 °C at best, not to 10 °C: 4 cm deep in a stirred ice bath it takes 40 min at the "
        "least, 50 min as a rule → lay it 3 cm deep: about 30 min, or give it 50 min");
}

TEST_CASE("what lies thin enough, has time enough, or is not known, is let be") {
  CHECK(said(chilled("ice", "2 cm", "1 h")).empty());
  CHECK(said(chilled("fridge", "5 cm", "overnight")).empty());
  CHECK(said(chilled("bench", "5 cm", "30 min")).empty());  // which never brings it there: food-beyond-its-medium's
  CHECK(said("<step do=\"chill\" on=\"fridge\" unattended=\"30 min\">Chill the <use of=\"cream\">cream</use> to "
             "<food-temp>10 °C</food-temp>.</step>").empty());
  CHECK(said("<step do=\"chill\" on=\"fridge\" unattended=\"30 min\">Pour the <use of=\"cream\">cream</use> "
             "<length>5 cm</length> deep and chill.</step>").empty());
}

TEST_CASE("on a bench nobody knows how much goes into the table, and on marble it is much") {
  const auto poured = [](const std::string& words) {
    return said("<step do=\"cool\" on=\"bench\" unattended=\"20 min\">Pour the <use of=\"cream\">cream</use> <length>3 cm</length> deep " +
                words + " and cool to <food-temp>30 °C</food-temp>.</step>");
  };
  CHECK(poured("into a tray").find("in 20 min it comes from 83 °C to ") == 0);
  CHECK(poured("onto the marble").empty());
}

TEST_CASE("what is stirred has one temperature all through, and gets there sooner") {
  CHECK_FALSE(said(chilled("ice", "8 cm", "40 min")).empty());
  CHECK(said(chilled("ice", "8 cm", "40 min", "stir it")).empty());
}

TEST_CASE("a house's own fridge is taken as the kitchen file has it") {
  const std::string kitchen = R"(<cold id="f" kind="fridge" at="3 °C" coefficient="90"/>)";
  CHECK_FALSE(said(chilled("fridge", "2 cm", "50 min")).empty());
  CHECK(said(chilled("f", "2 cm", "50 min"), kitchen).empty());
}
