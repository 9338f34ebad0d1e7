#include <catch2/catch.hpp>

#include <cstdint>
#include <limits>
#include <random>

#include "core/base/ratio.h"

namespace {

using tamis::base::Ratio;
using tamis::base::round_to;

constexpr std::int64_t largest = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t smallest = std::numeric_limits<std::int64_t>::min();

TEST_CASE("a ratio is kept in lowest terms with the sign above", "[ratio]") {
  CHECK(Ratio(6, 4).text() == "3/2");
  CHECK(Ratio(6, -4).text() == "-3/2");
  CHECK(Ratio(-6, -4).text() == "3/2");
  CHECK(Ratio(0, 7).text() == "0");
  CHECK(Ratio(8, 4).text() == "2");
  CHECK(Ratio(8, 4).whole());
}

TEST_CASE("twelfths add up exactly", "[ratio]") {
  Ratio sum;
  for (int i = 0; i < 12; ++i) sum = sum + Ratio(1, 12);
  CHECK(sum == Ratio(1));
}

TEST_CASE("a sum of kitchen ratios whose common denominator is large stays exact", "[ratio]") {
  // Twelve ingredients of cups, ounces and pounds: the case that a ratio of plain 64-bit products got wrong.
  const Ratio cup = *Ratio::parse("236.5882365");
  const Ratio ounce = *Ratio::parse("28.349523125");
  Ratio sum;
  for (int i = 1; i <= 6; ++i) sum = sum + cup * Ratio(i, 3) + ounce * Ratio(i, 8);
  REQUIRE(sum.ok());
  CHECK(sum == cup * 7 + ounce * Ratio(21, 8));
}

TEST_CASE("a ratio of any size is written with the places asked for", "[ratio]") {
  CHECK(Ratio(2, 3).decimal(0) == "1");
  CHECK(Ratio(2, 3).decimal(4) == "0.6667");
  CHECK(Ratio(-1, 8).decimal(2) == "-0.13");
  CHECK(Ratio(-1, 800).decimal(1) == "0.0");
  CHECK(Ratio(1999, 1000).decimal(2) == "2.00");
  CHECK(Ratio(largest, largest - 1).decimal(3) == "1.000");
  CHECK(Ratio(largest, 3).decimal(2) == "3074457345618258602.33");
  CHECK(Ratio(largest - 1, largest).decimal(18) == "1.000000000000000000");
  CHECK(Ratio::overflow().decimal(2) == "overflow");
}

TEST_CASE("rounding to a step needs no common denominator that fits", "[ratio]") {
  const Ratio awkward(6'988'796'192'267'919, 999'999'999'999'989);
  CHECK(round_to(awkward, Ratio(1, 8)) == Ratio(7));
  CHECK(round_to(awkward, Ratio(1, 997)) == Ratio(6968, 997));
  CHECK(round_to(-awkward, Ratio(1, 2)) == Ratio(-7));
  CHECK_FALSE(round_to(Ratio(largest), Ratio(1, 2)).ok());
}

TEST_CASE("what does not fit is overflow and stays so", "[ratio]") {
  const Ratio big(largest);
  for (const Ratio bad : {big + 1, big * 2, Ratio(1, largest) * Ratio(1, 3), Ratio(1) / 0, Ratio(smallest, 1),
                          Ratio(1, smallest), Ratio(1, 0), -big - 2}) {
    CAPTURE(bad.text());
    CHECK_FALSE(bad.ok());
    CHECK_FALSE((bad + 1).ok());
    CHECK_FALSE((bad * 0).ok());
    CHECK_FALSE((Ratio(1) / bad).ok());
    CHECK_FALSE((-bad).ok());
    CHECK_FALSE(bad == bad);
    CHECK_FALSE(bad < 1);
    CHECK_FALSE(bad > 1);
    CHECK(bad.text() == "overflow");
    CHECK(bad.nearest() == 0);
    CHECK(bad.floor() == 0);
  }
  CHECK((big + 0) == big);
  CHECK((-big - 1).ok() == false);
}

TEST_CASE("intermediates of 128 bits let large factors cancel", "[ratio]") {
  CHECK(Ratio(largest, 3) * Ratio(3, largest) == Ratio(1));
  CHECK(Ratio(largest) - Ratio(largest) == Ratio(0));
  CHECK(Ratio(1, largest) < Ratio(1, largest - 1));
  CHECK(Ratio(largest, largest - 1) > Ratio(1));
}

TEST_CASE("text is read as a ratio or not at all", "[ratio]") {
  struct Row {
    const char* text;
    const char* value;
  };
  for (const Row& row : {Row{"12", "12"}, Row{"-3", "-3"}, Row{"0.25", "1/4"}, Row{"7/8", "7/8"},
                         Row{"453.59237", "45359237/100000"}, Row{"-160/9", "-160/9"}, Row{"007", "7"},
                         Row{"922337203685477579", "922337203685477579"}}) {
    CAPTURE(row.text);
    const auto value = Ratio::parse(row.text);
    REQUIRE(value);
    CHECK(value->text() == row.value);
  }
  for (const char* bad : {"", "-", ".", "1.", ".5", "1/", "/2", "1/0", "1 ", " 1", "1,5", "1/2/3", "1.5/2", "+1", "x",
                          "9223372036854775808", "1.00000000000000000001", "--1", "1e3"}) {
    CAPTURE(bad);
    CHECK_FALSE(Ratio::parse(bad));
  }
}

TEST_CASE("floor and nearest go the right way on both sides of zero", "[ratio]") {
  struct Row {
    Ratio value;
    std::int64_t floor;
    std::int64_t nearest;
  };
  for (const Row& row : {Row{Ratio(7, 2), 3, 4}, Row{Ratio(-7, 2), -4, -4}, Row{Ratio(5, 3), 1, 2},
                         Row{Ratio(-5, 3), -2, -2}, Row{Ratio(1, 3), 0, 0}, Row{Ratio(-1, 3), -1, 0}, Row{4, 4, 4},
                         Row{Ratio(largest), largest, largest}}) {
    CAPTURE(row.value.text());
    CHECK(row.value.floor() == row.floor);
    CHECK(row.value.nearest() == row.nearest);
  }
}

TEST_CASE("rounding to a step takes halves away from zero", "[ratio]") {
  CHECK(round_to(Ratio(375, 2), 1) == Ratio(188));
  CHECK(round_to(Ratio(-375, 2), 1) == Ratio(-188));
  CHECK(round_to(356, 25) == Ratio(350));
  CHECK(round_to(Ratio(1, 10), Ratio(1, 8)) == Ratio(1, 8));
  CHECK_FALSE(round_to(Ratio::overflow(), 1).ok());
}

TEST_CASE("arithmetic agrees with long double on random ratios", "[ratio]") {
  std::mt19937 random(20240607);
  std::uniform_int_distribution<std::int64_t> figure(-100000, 100000);
  std::uniform_int_distribution<std::int64_t> below(1, 100000);
  for (int i = 0; i < 2000; ++i) {
    const Ratio a(figure(random), below(random));
    const Ratio b(figure(random), below(random));
    CAPTURE(a.text(), b.text());
    CHECK((a + b).approximate() == Approx(a.approximate() + b.approximate()).margin(1e-9));
    CHECK((a - b) + b == a);
    if (!(b == 0)) CHECK(a / b * b == a);
    CHECK((a < b) == (a.approximate() < b.approximate()));
  }
}

}  // namespace
