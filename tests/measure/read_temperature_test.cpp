#include <catch2/catch.hpp>

#include "core/measure/read.h"
#include "tests/measure/dump.h"

namespace {

using namespace tamis::measure;
using tamis::base::Ratio;
using tamis::tests::dump;
using tamis::tests::reading;

struct Row {
  const char* text;
  const char* expected;
};

void check_rows(std::initializer_list<Row> rows, const Reading& how) {
  for (const Row& row : rows) {
    CAPTURE(row.text, how.language);
    CHECK(dump(read_temperature(row.text, how)) == row.expected);
  }
}

TEST_CASE("temperatures are read on every scale a kitchen uses", "[read]") {
  check_rows({{"180 °C", "180 degc"},
              {"180°C", "180 degc"},
              {"180 ºC", "180 degc"},
              {"180 ° C", "180 degc"},
              {"180C", "180 degc"},
              {"180 ℃", "180 degc"},
              {"180 degrees C", "180 degc"},
              {"180 degrees Celsius", "180 degc"},
              {"356 °F", "356 degf"},
              {"350F", "350 degf"},
              {"350 degrees Fahrenheit", "350 degf"},
              {"300 K", "300 kelvin"},
              {"gas mark 4", "4 gas-mark"},
              {"Gas 4", "4 gas-mark"},
              {"gas mark 1/4", "1/4 gas-mark"},
              {"gas mark ½", "1/2 gas-mark"},
              {"gas mark 4–5", "4 gas-mark .. 5 gas-mark"},
              {"-18 °C", "-18 degc"},
              {"−18 °C", "-18 degc"},
              {"-2 to 4 °C", "-2 degc .. 4 degc"},
              {"-2 – -1 °C", "-2 degc .. -1 degc"},
              {"−18 to −22 °C", "-22 degc .. -18 degc"},
              {"82–84 °C", "82 degc .. 84 degc"},
              {"82 °C–84 °C", "82 degc .. 84 degc"},
              {"82.5 °C", "165/2 degc"}},
             reading("en"));
}

TEST_CASE("limits of temperature are read both ways round", "[read]") {
  check_rows({{"140 °F or higher", ">= 140 degf"},
              {"140 F or higher", ">= 140 degf"},
              {"140 °F or warmer", ">= 140 degf"},
              {"at least 75 °C", ">= 75 degc"},
              {"above 75 °C", ">= 75 degc"},
              {"≥ 75 °C", ">= 75 degc"},
              {"41 °F or lower", "<= 41 degf"},
              {"40 F or colder", "<= 40 degf"},
              {"no higher than 110 F", "<= 110 degf"},
              {"at most 38 °C", "<= 38 degc"},
              {"under 8 °C", "<= 8 degc"},
              {"below 8 °C", "<= 8 degc"},
              {"about 30 °C", "~ 30 degc"}},
             reading("en"));
}

TEST_CASE("degrees of no scale are asked about", "[read]") {
  check_rows({{"350 degrees", "ambiguous-unit"}, {"350°", "ambiguous-unit"}, {"350", "unreadable-amount"}},
             reading("en"));
  check_rows({{"350 degrees", "350 degf"}, {"350°", "350 degf"}}, reading("en", System::us));
  check_rows({{"180 degrees", "180 degc"}, {"180°", "180 degc"}}, reading("en", System::metric));
  check_rows({{"180 Grad", "180 degc"}, {"180°", "180 degc"}}, reading("de"));
}

TEST_CASE("words for a temperature", "[read]") {
  check_rows({{"boiling", "word boiling"},
              {"just below boiling", "word just-below-boiling"},
              {"room temperature", "word room-temperature"},
              {"ice water", "word ice-water"},
              {"fridge cold", "word fridge-cold"},
              {"lukewarm", "word lukewarm"},
              {"moderate oven", "word moderate-oven"},
              {"a moderate oven", "unknown-trade-word"},
              {"medium heat", "word medium-heat"},
              {"medium-high heat", "word medium-high-heat"},
              {"moderate ovn", "unknown-trade-word"},
              {"overnight", "wrong-kind"},
              {"to taste", "wrong-kind"}},
             reading("en"));
}

TEST_CASE("the oven's mode is no part of a temperature", "[read]") {
  check_rows({{"180 °C fan", "unreadable-amount"}, {"160 °C/gas mark 3", "unreadable-amount"}}, reading("en"));
}

TEST_CASE("gas marks that no cooker has are refused", "[read]") {
  check_rows({{"gas mark 10", "unreadable-amount"},
              {"gas mark 3 1/2", "unreadable-amount"},
              {"gas mark 0", "unreadable-amount"}},
             reading("en"));
}

TEST_CASE("temperatures in French, German and Spanish", "[read]") {
  check_rows({{"180 °C", "180 degc"},
              {"180 degrés", "180 degc"},
              {"th. 6", "6 thermostat"},
              {"thermostat 6", "6 thermostat"},
              {"au plus 38 °C", "<= 38 degc"},
              {"38 °C au maximum", "<= 38 degc"},
              {"température ambiante", "word room-temperature"},
              {"à ébullition", "word boiling"},
              {"82 à 84 °C", "82 degc .. 84 degc"}},
             reading("fr"));
  check_rows({{"180 Grad", "180 degc"},
              {"mindestens 75 °C", ">= 75 degc"},
              {"Zimmertemperatur", "word room-temperature"},
              {"82,5 °C", "165/2 degc"}},
             reading("de"));
  check_rows({{"180 grados", "180 degc"}, {"como máximo 38 °C", "<= 38 degc"}, {"tibio", "word lukewarm"}},
             reading("es"));
}

TEST_CASE("a Fahrenheit figure is exact in Celsius", "[read]") {
  const auto read = read_temperature("165 °F", reading("en"));
  REQUIRE(read);
  CHECK(read->low_base() == Ratio(665, 9));
  CHECK(read_temperature("gas mark 4", reading("en"))->low_base() == Ratio(1590, 9));
  CHECK(read_temperature("gas mark 1/4", reading("en"))->low_base() == Ratio(965, 9));
}

}  // namespace
