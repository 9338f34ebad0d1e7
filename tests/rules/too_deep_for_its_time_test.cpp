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

namespace {

/// What the rule says of those steps, with what they are of.
std::string said_of(const std::string& inside) {
  const auto checked = tamis::tests::check_text(
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><title>T</title><component id=\"c\" title=\"C\">" +
          inside + "</component></fiche>",
      tamis::tests::kitchen_of(""));
  for (const auto& finding : checked.findings)
    if (finding.rule == "too-deep-for-its-time") return finding.message + " → " + finding.advice;
  return "";
}

std::string out_of_the_freezer(const std::string& step) {
  return said_of(
      R"(<ingredient id="cream" food="cream-35">400 g</ingredient><ingredient id="chocolate" food="chocolate-dark-70">200 g</ingredient>
<step do="mix" makes="mix" hands="5 min">Mix <use of="cream">cream</use> and <use of="chocolate">chocolate</use>.</step>
<step do="pour freeze" on="freezer" makes="frozen" unattended="12 h">Pour the <use of="mix">cream</use> <length>6 cm</length> deep and freeze.</step>)" +
      step);
}

std::string heated(const std::string& food, const std::string& step) {
  return said_of("<ingredient id=\"i\" " + food + ">800 g</ingredient>" + step);
}

std::string step(const std::string& how, const std::string& time, const std::string& words) {
  return "<step " + how + " unattended=\"" + time + "\">" + words + "</step>";
}

const std::string to_fifty =
    "Poach the <use of=\"i\">salmon</use>, <length>4 cm</length> thick, at <medium-temp>55 °C</medium-temp> to "
    "<food-temp place=\"core\">50 "
    "°C</food-temp>.";
const std::string to_75 =
    "Reheat the <use of=\"i\">meat</use>, <length>5 cm</length> thick, at <oven-temp mode=\"fan\">150 "
    "°C</oven-temp> to "
    "<food-temp place=\"core\">75 °C</food-temp>.";

}  // namespace

TEST_CASE("a frozen dessert is not thawed in half an hour of the fridge, whoever asks for it") {
  const std::string told =
      "in 30 min it comes from -12 °C to -10 °C at best, not to 4 °C: 6 cm deep in a fridge it takes 17 h at the "
      "least → take it out 17 h "
      "ahead, or make it in smaller portions";
  CHECK(out_of_the_freezer(step("do=\"temper\" on=\"fridge\"", "30 min",
                                "Leave the <use of=\"frozen\">frame</use> to <food-temp>4 °C</food-temp>.")) ==
        told);
  CHECK(out_of_the_freezer(
            step("do=\"stand\" on=\"fridge\" makes=\"t\"", "30 min", "Leave the <use of=\"frozen\">frame</use>.") +
            "<step do=\"serve\">Serve the <use of=\"t\" at=\"4–6 °C\">frame</use>.</step>") == told);
  CHECK(out_of_the_freezer(step("do=\"chill\" on=\"fridge\"", "10 h",
                                "Leave the <use of=\"frozen\">frame</use> to <food-temp>4 °C</food-temp>."))
            .empty());
  CHECK(out_of_the_freezer(step("do=\"stand\" on=\"bench\"", "30 min",
                                "Leave the <use of=\"frozen\">frame</use> to <food-temp>-10 °C</food-temp>."))
            .empty());
}

TEST_CASE("a piece is not heated through before heat can be there, and may be a roll") {
  CHECK(heated("food=\"salmon\"", step("do=\"poach\" on=\"water-bath\"", "10 min", to_fifty)) ==
        "in 10 min it comes from 8 °C to 18 °C at best, not to 50 °C: 4 cm thick in a circulated water bath it "
        "takes 45 min at the least, "
        "60 min as a rule → cut it 1 cm thick: about 6 min, or give it 60 min");
  CHECK(heated("food=\"salmon\"", step("do=\"poach\" on=\"water-bath\"", "25 min", to_fifty)).empty());
  CHECK(heated("food=\"pork-shoulder\" at=\"-18 °C\"", step("do=\"reheat\" on=\"oven\"", "20 min", to_75)) ==
        "in 20 min it comes from -18 °C to -4 °C at best, not to 75 °C: 5 cm thick in a fan oven it takes 75 min "
        "at the least, 95 min as a "
        "rule → cut it 1.5 cm thick: about 19 min, or give it 95 min");
  CHECK(
      heated("food=\"pork-shoulder\" at=\"-18 °C\"", step("do=\"reheat\" on=\"oven\"", "45 min", to_75)).empty());
}

TEST_CASE("what mixes itself, what is in a pan or a microwave, and a crumb are heated otherwise") {
  CHECK(heated("food=\"milk-whole\"", step("do=\"heat\" on=\"water-bath\"", "10 min", to_fifty)).empty());
  CHECK(heated("food=\"salmon\"",
               step("do=\"poach\" on=\"water-bath\"", "10 min", to_fifty + " Brown it in the pan."))
            .empty());
  CHECK(heated("food=\"pork-shoulder\"",
               step("do=\"reheat\" on=\"oven\"", "5 min", to_75 + " Start it in the microwave."))
            .empty());
  CHECK(heated("food=\"flour-wheat-white\"", step("do=\"bake\" on=\"oven\"", "5 min", to_75)).empty());
}

// Outside: heating times of slabs in a water bath, from 5 °C to half a degree below the bath at 55 °C, by a
// published table of sous-vide cooking (Int. J. Gastronomy and Food Science 1, 2012, 15; from memory): 20 mm 50
// min, 40 mm about 2 h 20 min.
TEST_CASE("times that tables of sous-vide cooking give for slabs are never accused") {
  const auto bath = [](const std::string& depth, const std::string& time) {
    return heated("food=\"salmon\" at=\"5 °C\"",
                  step("do=\"poach\" on=\"water-bath\"", time,
                       "Poach the <use of=\"i\">salmon</use>, <length>" + depth +
                           "</length> thick, at <medium-temp>55 °C</medium-temp> to "
                           "<food-temp place=\"core\">54.5 °C</food-temp>."));
  };
  CHECK(bath("20 mm", "50 min").empty());
  CHECK(bath("40 mm", "140 min").empty());
  CHECK_FALSE(bath("40 mm", "30 min").empty());
}
