#include <catch2/catch.hpp>

#include <random>
#include <string>

#include "core/measure/read.h"
#include "core/measure/trade_word.h"
#include "core/measure/write.h"
#include "tests/measure/dump.h"

namespace {

using namespace tamis::measure;
using tamis::base::Ratio;
using tamis::tests::dump;
using tamis::tests::reading;

constexpr Kinds every_kind = ~0U & ~set_of(Kind::temperature_difference);

std::string written(const char* text, const char* language, System system = System::us, bool no_break = false) {
  Writing writing;
  writing.language = language;
  writing.no_break = no_break;
  const auto read = read_amount(text, every_kind, reading("en", system));
  REQUIRE(read);
  return write_amount(*read, writing);
}

TEST_CASE("amounts are written as people do", "[write]") {
  struct Row {
    const char* text;
    const char* expected;
  };
  for (const Row& row : {Row{"1.5 cups", "1 ½ cups"},      Row{"0.5 cup", "½ cup"},
                         Row{"1 cup", "1 cup"},            Row{"250 g", "250 g"},
                         Row{"1.2 kg", "1.2 kg"},          Row{"1500 g", "1500 g"},
                         Row{"0.5 kg", "0.5 kg"},          Row{"1 lb 2 oz", "1 lb 2 oz"},
                         Row{"0.333333 g", "0.333333 g"},  Row{"4 4/5 oz", "4 4/5 oz"},
                         Row{"3 3/16 in", "3 3/16 in"},    Row{"1 3/17 cups", "1.17647 cups"},
                         Row{"375 °F", "375 °F"},          Row{"82.5 °C", "82.5 °C"},
                         Row{"-18 °C", "−18 °C"},          Row{"gas mark 1/2", "gas mark ½"},
                         Row{"gas mark 4-5", "gas mark 4–5"},
                         Row{"82 to 84 °C", "82–84 °C"},   Row{"-2 to 4 °C", "−2–4 °C"},
                         Row{"-18 to -22 °C", "−22 to −18 °C"},
                         Row{"20 min to 1/2 h", "20 min–0.5 h"}, Row{"1 h 30", "1 h 30 min"},
                         Row{"1 h to 1 h 30 min", "1 h to 1 h 30 min"},
                         Row{"approx. 15 min", "about 15 min"}, Row{"no higher than 38 °C", "at most 38 °C"},
                         Row{"75 °C or higher", "at least 75 °C"}, Row{"4", "4"}, Row{"3 or 4", "3–4"},
                         Row{"2 leaves", "2 leaves"},      Row{"1 leaf", "1 leaf"},
                         Row{"2 tbsp + 1 cup", "2 tbsp + 1 cup"}, Row{"to taste", "to taste"},
                         Row{"12 h", "12 h"},              Row{"3 days", "3 days"}}) {
    CAPTURE(row.text);
    CHECK(written(row.text, "en") == row.expected);
  }
}

TEST_CASE("figure and unit are never parted at a line's end", "[write]") {
  CHECK(written("1.5 cups", "en", System::us, true) == "1\u00A0½\u00A0cups");
  CHECK(written("82 to 84 °C", "en", System::us, true) == "82–84\u00A0°C");
  CHECK(written("1 lb 2 oz", "en", System::us, true) == "1\u00A0lb\u00A02\u00A0oz");
  CHECK(written("12500 g", "fr", System::us, true) == "12\u202F500\u00A0g");
}

TEST_CASE("each language has its sign, its words and its plural", "[write]") {
  struct Row {
    const char* text;
    const char* language;
    const char* expected;
  };
  for (const Row& row :
       {Row{"1.5 kg", "fr", "1,5 kg"}, Row{"1.5 kg", "de", "1,5 kg"}, Row{"1.5 kg", "es", "1,5 kg"},
        Row{"1.5 kg", "en-GB", "1.5 kg"}, Row{"1.5 kg", "de-CH", "1.5 kg"}, Row{"1.5 kg", "es-MX", "1.5 kg"},
        Row{"1500 g", "fr", "1 500 g"}, Row{"1500 g", "de", "1500 g"}, Row{"12500 g", "de", "12 500 g"},
        Row{"12500 g", "en", "12500 g"}, Row{"1.5 cups", "fr", "1 ½ tasse"}, Row{"2 cups", "fr", "2 tasses"},
        Row{"1.5 cups", "de", "1 ½ Tassen"}, Row{"2 tbsp", "fr", "2 c. à s."}, Row{"2 tbsp", "de", "2 EL"},
        Row{"2 tbsp", "es", "2 cda."}, Row{"2 leaves", "de", "2 Blatt"}, Row{"2 cloves", "fr", "2 gousses"},
        Row{"about 2 cloves", "de", "etwa 2 Zehen"}, Row{"at most 38 °C", "es", "como máximo 38 °C"},
        Row{"at least 75 °C", "de", "mindestens 75 °C"}, Row{"overnight", "fr", "une nuit"},
        Row{"gas mark 4", "fr", "gas mark 4"}, Row{"-22 to -18 °C", "fr", "−22 à −18 °C"},
        Row{"2 in", "fr", "2 po"}, Row{"3 days", "es", "3 días"}}) {
    CAPTURE(row.text, row.language);
    CHECK(written(row.text, row.language) == row.expected);
  }
}

TEST_CASE("numbers alone", "[write]") {
  Writing plain;
  plain.fractions = false;
  CHECK(write_number(Ratio(1, 3), plain) == "0.333333");
  CHECK(write_number(Ratio(6'988'796'192'267'919, 999'999'999'999'989), plain) == "6.9888");
  CHECK(write_number(Ratio(2, 3), plain) == "0.666667");
  CHECK(write_number(*Ratio::parse("453.59237"), plain) == "453.592");
  CHECK(write_number(*Ratio::parse("0.000123456789"), plain) == "0.000123457");
  CHECK(write_number(*Ratio::parse("999999.96"), plain) == "1000000");
  CHECK(write_number(*Ratio::parse("9.9999999"), plain) == "10");
  CHECK(write_number(Ratio(0), plain) == "0");
  CHECK(write_number(Ratio(-1, 4), plain) == "−0.25");
  plain.digits = 3;
  CHECK(write_number(*Ratio::parse("453.59237"), plain) == "454");
  CHECK(write_number(Ratio(3, 2), Writing{}) == "1\u00A0½");
  CHECK(write_number(Ratio(3, 2), Writing{.language = "fr", .fractions = false}) == "1,5");
  CHECK(write_number(Ratio::overflow(), plain) == "overflow");
}

// ---- there and back

const std::initializer_list<const char*> languages = {"en", "en-US", "en-GB", "fr", "de", "es", "es-MX", "de-CH", "it"};

System own_system(const Unit& unit) {
  return unit.system == System::si || unit.system == System::trade ? System::none : unit.system;
}

/// What cannot be told from its written form: a difference of temperature looks like a temperature.
bool same(const Amount& a, const Amount& b) { return a == b; }

void check_back(const Amount& amount, const char* language, System system) {
  for (const bool no_break : {true, false}) {
    Writing writing;
    writing.language = language;
    writing.no_break = no_break;
    const std::string text = write_amount(amount, writing);
    const auto back = read_amount(text, set_of(amount.kind), reading(language, system));
    if (!back || !same(*back, amount)) {
      CAPTURE(text, language, dump(amount), dump(back));
      FAIL("not the same back");
    }
  }
}

TEST_CASE("every unit in every language is read back as it was written", "[write][property]") {
  std::mt19937 random(1826);
  const Ratio parts[] = {0, Ratio(1, 2), Ratio(1, 4), Ratio(3, 4), Ratio(1, 3), Ratio(2, 3), Ratio(1, 8), Ratio(7, 8)};
  const Ratio decimals[] = {0, Ratio(1, 2), Ratio(1, 4), Ratio(1, 10), Ratio(3, 100)};
  std::uniform_int_distribution<int> whole(0, 30);
  std::uniform_int_distribution<std::size_t> part(0, 7);
  std::uniform_int_distribution<std::size_t> decimal(0, 4);
  for (const char* language : languages) {
    for (const Unit& unit : units()) {
      if (is_gas_mark(unit)) continue;
      const bool degrees = unit.kind == Kind::temperature || unit.kind == Kind::temperature_difference;
      const bool si = unit.system == System::si || degrees;
      for (int i = 0; i < 12; ++i) {
        const bool large = i % 4 == 3;
        Ratio value = whole(random) * (large ? 1000 : 1);
        if (!large) value = value + (si ? decimals[decimal(random)] : parts[part(random)]);
        if (i == 0) value = 1;
        Amount amount = amount_of(value, unit);
        amount.about = i % 3 == 2;
        check_back(amount, language, own_system(unit));
        amount.form = Amount::Form::at_least;
        check_back(amount, language, own_system(unit));
        amount.form = Amount::Form::at_most;
        std::swap(amount.low, amount.high);
        check_back(amount, language, own_system(unit));
        amount.form = Amount::Form::range;
        amount.low = {{amount.high.front().value / 2, &unit}};
        if (amount.low.front().value.denominator() <= 16 && !si) check_back(amount, language, own_system(unit));
      }
    }
  }
}

TEST_CASE("every gas mark and every negative temperature is read back", "[write][property]") {
  for (const char* language : languages) {
    for (const Ratio mark : {Ratio(1, 4), Ratio(1, 2), Ratio(1), Ratio(5), Ratio(9)}) {
      check_back(amount_of(mark, *unit_by_id("gas-mark")), language, System::imperial);
    }
    for (const char* id : {"degc", "degf"}) {
      Amount amount = amount_of(-22, *unit_by_id(id));
      check_back(amount, language, System::none);
      amount.form = Amount::Form::range;
      for (const int high : {-18, 4}) {
        amount.high = {{high, unit_by_id(id)}};
        check_back(amount, language, System::none);
      }
    }
  }
}

TEST_CASE("compounds are read back in every language", "[write][property]") {
  const auto quantity = [](Ratio value, const char* unit) { return Quantity{value, unit_by_id(unit)}; };
  const std::vector<std::vector<Quantity>> compounds = {
      {quantity(1, "lb"), quantity(Ratio(21, 2), "oz")},
      {quantity(1, "quart-us"), quantity(Ratio(3, 2), "cup-us"), quantity(1, "tbsp-us"), quantity(Ratio(7, 3), "tsp-us")},
      {quantity(1, "can-no-10"), quantity(Ratio(3, 2), "cup-us")},
      {quantity(2, "tbsp-us"), quantity(1, "cup-us")},
      {quantity(1, "pint-imperial"), quantity(Ratio(7, 2), "floz-imperial")},
      {quantity(1, "h"), quantity(30, "min")},
      {quantity(2, "day"), quantity(12, "h"), quantity(5, "min"), quantity(30, "s")}};
  for (const char* language : languages) {
    for (const auto& parts : compounds) {
      Amount amount;
      amount.kind = parts.front().unit->kind;
      amount.low = parts;
      const System system = own_system(*parts.back().unit);
      check_back(amount, language, system);
      amount.form = Amount::Form::range;
      amount.high = amount.low;
      amount.high.front().value = amount.high.front().value + 1;
      check_back(amount, language, system);
    }
  }
}

TEST_CASE("every trade word is read back in every language", "[write][property]") {
  for (const char* language : languages) {
    for (const TradeWord& word : trade_words()) {
      Amount amount;
      amount.form = Amount::Form::words;
      amount.kind = word.kind;
      amount.words = word.id;
      check_back(amount, language, System::none);
    }
  }
}

}  // namespace
