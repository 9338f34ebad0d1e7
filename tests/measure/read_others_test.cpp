#include <catch2/catch.hpp>

#include <string>

#include "core/measure/read.h"
#include "tests/measure/dump.h"

namespace {

using namespace tamis::measure;
using tamis::tests::dump;
using tamis::tests::reading;

struct Row {
  const char* text;
  const char* expected;
};

std::string dump_lengths(const char* text, const Reading& how) {
  const auto read = read_lengths(text, how);
  if (!read) return read.fault().rule + " " + std::to_string(read.fault().where.begin);
  std::string out;
  for (const Amount& length : *read) out += (out.empty() ? "" : " x ") + dump(length);
  return out;
}

TEST_CASE("lengths are read in order, a bare figure with the next one's unit", "[read]") {
  const Reading en = reading("en");
  for (const Row& row : {Row{"36 cm", "36 cm"}, Row{"12 × 20 in", "12 in x 20 in"}, Row{"12x20 in", "12 in x 20 in"},
                         Row{"12 x 20 x 2 1/2 in", "12 in x 20 in x 5/2 in"}, Row{"12 by 20 in", "12 in x 20 in"},
                         Row{"36 cm × 26 cm × 4 cm", "36 cm x 26 cm x 4 cm"}, Row{"12 in × 5 cm", "12 in x 5 cm"},
                         Row{"2–3 × 4 cm", "2 cm .. 3 cm x 4 cm"}, Row{"5\" × 9\"", "5 in x 9 in"},
                         Row{"12 × 20", "unreadable-amount 6"}, Row{"× 20 cm", "unreadable-amount 0"},
                         Row{"12 × 20 g", "wrong-kind 9"}, Row{"12 × cm", "unreadable-amount 6"},
                         Row{"", "unreadable-amount 0"},
                         Row{"1 x 1 x 1 x 1 x 1 x 1 x 1 x 1 x 1 cm", "unreadable-amount 27"}}) {
    CAPTURE(row.text);
    CHECK(dump_lengths(row.text, en) == row.expected);
  }
}

std::string dump_share(const char* text, const Reading& how) {
  const auto read = read_share(text, how);
  if (!read) return read.fault().rule;
  switch (read->form) {
    case Share::Form::rest: return "rest";
    case Share::Form::fraction: return read->fraction.text();
    case Share::Form::amount: return dump(read->amount);
  }
  return {};
}

TEST_CASE("shares are fractions, percents, the rest or an amount", "[read]") {
  for (const Row& row : {Row{"1/2", "1/2"}, Row{"½", "1/2"}, Row{"half", "1/2"}, Row{"a third", "1/3"},
                         Row{"two thirds", "2/3"}, Row{"3 %", "3/100"}, Row{"3%", "3/100"}, Row{"12.5 %", "1/8"},
                         Row{"100 %", "1"}, Row{"1", "1"}, Row{"the rest", "rest"}, Row{"The rest", "rest"},
                         Row{"125 g", "125 g"}, Row{"0.5", "1/2"}, Row{"2", "2 piece"}, Row{"1 quart", "1 quart-us"},
                         Row{"120 %", "unreadable-amount"}, Row{"1 1/2", "unreadable-amount"},
                         Row{"0/1", "0 piece"}, Row{"%", "unreadable-amount"}, Row{"2 cm", "wrong-kind"},
                         Row{"most of it", "unknown-trade-word"}}) {
    CAPTURE(row.text);
    CHECK(dump_share(row.text, reading("en", System::us)) == row.expected);
  }
  CHECK(dump_share("la moitié", reading("fr")) == "1/2");
  CHECK(dump_share("12,5 %", reading("fr")) == "1/8");
  CHECK(dump_share("der Rest", reading("de")) == "rest");
  CHECK(dump_share("un tercio", reading("es")) == "1/3");
}

TEST_CASE("plain numbers", "[read]") {
  const auto text = [](const char* number, const Reading& how) {
    const auto read = read_number(number, how);
    return read ? read->text() : read.fault().rule;
  };
  for (const Row& row : {Row{"4", "4"}, Row{"1.5", "3/2"}, Row{"1/2", "1/2"}, Row{" 1 1/2 ", "3/2"}, Row{"twelve", "12"},
                         Row{"1,5", "unreadable-amount"}, Row{"1,500", "ambiguous-number"}, Row{"4 g", "unreadable-amount"},
                         Row{"", "unreadable-amount"}, Row{"x", "unreadable-amount"}, Row{"-4", "unreadable-amount"}}) {
    CAPTURE(row.text);
    CHECK(text(row.text, reading("en")) == row.expected);
  }
  CHECK(text("1,5", reading("fr")) == "3/2");
}

TEST_CASE("a unit alone is read by name or id", "[read]") {
  const auto id = [](const char* name, const Reading& how) {
    const auto read = read_unit(name, how);
    return read ? std::string((*read)->id) : read.fault().rule;
  };
  for (const Row& row : {Row{"g", "g"}, Row{"grams", "g"}, Row{"cup", "cup-us"}, Row{"cup-metric", "cup-metric"},
                         Row{"°F", "degf"}, Row{"c", "cup-us"}, Row{"C", "degc"}, Row{"gas mark", "gas-mark"}, Row{" ml ", "ml"},
                         Row{"gram s", "unknown-unit"}, Row{"1 g", "unknown-unit"}, Row{"", "unknown-unit"}}) {
    CAPTURE(row.text);
    CHECK(id(row.text, reading("en", System::us)) == row.expected);
  }
  CHECK(id("cup", reading("en")) == "ambiguous-unit");
  CHECK(id("EL", reading("de")) == "tbsp-metric");
}

}  // namespace
