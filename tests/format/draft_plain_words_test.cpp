// What a draft takes from plain words only: hands-on and unattended time, the name of a result, two scales of one
// temperature, portions beside a mould, and where a step begins.

#include <catch2/catch.hpp>

#include "tests/format/draft_tools.h"

using namespace tamis;
using fiche::At;
using fiche::El;

namespace {

std::shared_ptr<fiche::Document> with_steps(const std::string& steps) {
  return tests::fiche_of(tests::drafted("Dish\n\nIngredients\n200 g sugar\n100 g water\n300 g flour\n\nMethod\n" + steps + "\n",
                                        "en", "metric"));
}

std::string times_of(const std::string& step) {
  const auto document = with_steps("1. " + step);
  const auto steps = tests::all_of(*document, El::step);
  if (steps.size() != 1) return std::to_string(steps.size()) + " steps";
  return "hands=" + std::string(document->get(steps[0], At::hands)) +
         " unattended=" + std::string(document->get(steps[0], At::unattended));
}

}  // namespace

TEST_CASE("hands-on and unattended time are taken where the sentence says them plainly", "[draft]") {
  const std::pair<const char*, const char*> rows[] = {
      {"Knead 8 min.", "hands=8 min unattended="},
      {"Rest for 2 h.", "hands= unattended=2 h"},
      {"Chill overnight.", "hands= unattended=overnight"},
      {"Knead the dough for 8 minutes and rest 1 h.", "hands=8 minutes unattended=1 h"},
      {"Rest in the fridge for at least 4 h.", "hands= unattended=at least 4 h"},
      {"Chill 4 h or overnight.", "hands= unattended="},
      {"Chill for 4 hrs or overnite.", "hands= unattended="},
      {"Rest 1 h, then rest 30 min.", "hands= unattended="},
      {"Rest the dough, turn it after 10 minutes.", "hands= unattended="},
      {"Chill for up to 2 days.", "hands= unattended="},
      {"Bake for 20 minutes.", "hands= unattended="},
      {"Knead in the mixer for 8 minutes.", "hands= unattended="},
      {"Stir, then leave it. 10 minutes are enough.", "hands= unattended="},
  };
  for (const auto& [typed, want] : rows) {
    CAPTURE(typed);
    CHECK(times_of(typed) == want);
  }
}

TEST_CASE("a result has a name where the author gives it one and speaks of it again", "[draft]") {
  const std::tuple<const char*, const char*, const char*> rows[] = {
      {"Boil the sugar and water. This is the syrup.", "Mix the flour with the syrup.", "syrup"},
      {"Boil the sugar and water, call it the light syrup.", "Mix the flour with the light syrup.", "light-syrup"},
      {"Boil the sugar and water. This is the syrup.", "Mix in the flour.", ""},                    // not spoken of again
      {"Boil the sugar and water. This is the hard part.", "Mix in the flour.", ""},
      {"Boil the sugar and water. This is the sugar.", "Mix in the flour and the sugar.", ""},      // an ingredient's name
      {"Boil the sugar and water. This is the syrup that sets.", "Mix the flour with the syrup.", ""},
      {"Boil the sugar and water to a syrup.", "Mix the flour with the syrup.", ""},
  };
  for (const auto& [first, second, want] : rows) {
    CAPTURE(first, second);
    const auto document = with_steps(std::string("1. ") + first + "\n2. " + second);
    const auto steps = tests::all_of(*document, El::step);
    REQUIRE(steps.size() == 2);
    CHECK(document->get(steps[0], At::makes) == want);
    const std::string use = "<use of=\"" + std::string(want) + "\">";
    CHECK((tests::inner_xml(*document, steps[1]).find(use) != std::string::npos) == (std::string(want) != ""));
  }
}

TEST_CASE("a temperature in two scales is one, the other scale beside it", "[draft]") {
  const std::pair<const char*, const char*> rows[] = {
      {"Bake at 180 \u00B0C (350 \u00B0F).", "Bake at <oven-temp also=\"350 \u00B0F\">180 \u00B0C</oven-temp>."},
      {"Bake at 180\u00B0C/350\u00B0F for 20 min.",
       "Bake at <oven-temp also=\"350\u00B0F\">180\u00B0C</oven-temp> for <time>20 min</time>."},
      {"Bake at 350 \u00B0F (180 \u00B0C) fan.", "Bake at <oven-temp also=\"180 \u00B0C\" mode=\"fan\">350 \u00B0F</oven-temp> fan."},
      {"Bake at 180 \u00B0C (350 \u00B0F)10 min.",
       "Bake at <oven-temp>180 \u00B0C</oven-temp> (<oven-temp>350 \u00B0F</oven-temp>)<time>10 min</time>."},
      {"Cook to 82 \u00B0C (180 \u00B0F).", "Cook to <food-temp also=\"180 \u00B0F\">82 \u00B0C</food-temp>."},
      {"Bake at 180 \u00B0C (160 \u00B0C fan).",
       "Bake at <oven-temp>180 \u00B0C</oven-temp> (<oven-temp mode=\"fan\">160 \u00B0C</oven-temp> fan)."},
      {"Bake at 180 \u00B0C (350 \u00B0F, gas mark 4).",
       "Bake at <oven-temp>180 \u00B0C</oven-temp> (<oven-temp>350 \u00B0F</oven-temp>, <oven-temp>gas mark 4</oven-temp>)."},
  };
  for (const auto& [typed, want] : rows) {
    CAPTURE(typed);
    const auto document = with_steps(std::string("1. ") + typed);
    const auto steps = tests::all_of(*document, El::step);
    REQUIRE(steps.size() == 1);
    CHECK(tests::inner_xml(*document, steps[0]) == want);
  }
}

TEST_CASE("portions and the mould they are made in stand on one line", "[draft]") {
  const std::tuple<const char*, const char*, const char*> rows[] = {
      {"Serves 12, one 26 cm ring", "12", "26 cm"},  {"Serves 12 (one 26 cm ring)", "12", "26 cm"},
      {"Serves 8 in a 20 cm ring", "8", "20 cm"},    {"Serves 10 to 12, one 26 cm ring", "", "26 cm"},
      {"For one 24 cm ring", "", "24 cm"},
  };
  for (const auto& [typed, portions, diameter] : rows) {
    CAPTURE(typed);
    const auto document = tests::fiche_of(tests::drafted("Dish\n" + std::string(typed) + "\n\n200 g sugar\n\nBoil the sugar.\n", "en"));
    const auto yields = tests::all_of(*document, El::yield);
    const auto moulds = tests::all_of(*document, El::mould);
    REQUIRE((yields.size() == 1 && moulds.size() == 1));
    CHECK(document->get(yields[0], At::portions) == portions);
    CHECK(document->get(moulds[0], At::diameter) == diameter);
  }
}

TEST_CASE("a line that opens with a verb is a step, unless the line before breaks off", "[draft]") {
  const auto count = [](const std::string& steps) {
    return tests::all_of(*with_steps(steps), El::step).size();
  };
  const std::string line = "boil the sugar and the water together in a heavy pan on the hob";
  CHECK(count(line + "\nmix in the flour") == 2);
  CHECK(count(line + " and\nmix in the flour") == 1);
  CHECK(count(line + ",\nmix in the flour") == 1);
  CHECK(count(line + "\nuntil it is clear") == 1);
  CHECK(count("1. " + line + "\nmix in the flour\n2. rest") == 2);
}
