#include <catch2/catch.hpp>

#include <string>

#include "core/measure/read.h"
#include "tests/measure/dump.h"

namespace {

using namespace tamis::measure;
using tamis::tests::dump;
using tamis::tests::reading;

constexpr Kinds no_count = amount_kinds & ~set_of(Kind::count);

struct Row {
  const char* text;
  const char* taken;  ///< the bytes that are the amount
};

void check_rows(std::initializer_list<Row> rows, Kinds kinds, const Reading& how) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const Found found = find_amount(row.text, kinds, how);
    CHECK(std::string(row.text).substr(0, found.used) == row.taken);
  }
}

TEST_CASE("an amount at the start of a sentence's rest is found whole", "[find]") {
  check_rows({{"250 g butter, diced", "250 g"},
              {"250g butter", "250g"},
              {"1 ½ cups flour (180 g)", "1 ½ cups"},
              {"1 lb 2 oz of sugar", "1 lb 2 oz"},
              {"2 tbsp. sugar", "2 tbsp."},
              {"2 tbsp.", "2 tbsp"},
              {"2 tbsp. Then stir", "2 tbsp"},
              {"3 to 4 tbsp water", "3 to 4 tbsp"},
              {"2 cm thick", "2 cm"},
              {"2 in thick", "2 in"},
              {"2-inch pieces", "2-inch"},
              {"about 2 cups water", "about 2 cups"},
              {"a pinch of salt", "a pinch"}},
             no_count, reading("en", System::us));
}

TEST_CASE("words that only look like a unit are let be", "[find]") {
  check_rows({{"5 in a bowl", ""},
              {"2 in the tin", ""},
              {"4 eggs", ""},
              {"250", ""},
              {"250 gallant cooks", ""},
              {"3/4 of it", ""},
              {"2 % fat", ""},
              {"10 g/kg", ""},
              {"pinch the edges", ""},
              {"1/2/2026", ""}},
             no_count, reading("en", System::us));
}

TEST_CASE("bare numbers are found when a count is wanted", "[find]") {
  check_rows({{"4 eggs", "4"},
              {"4 250 g tins", "4"},
              {"3–4 eggs", "3–4"},
              {"two eggs", "two"},
              {"a cook", ""},
              {"2 cloves garlic", "2 cloves"},
              {"4th egg", ""},
              {"19:30", ""},
              {"4-inch ring", "4-inch"}},
             amount_kinds, reading("en", System::us));
}

TEST_CASE("temperatures and times are found in a sentence", "[find]") {
  check_rows({{"180 °C (fan 160 °C)", "180 °C"},
              {"180 °C.", "180 °C"},
              {"82–84 °C, stirring", "82–84 °C"},
              {"gas mark 4 for an hour", "gas mark 4"},
              {"at least 75 °C in the core", "at least 75 °C"},
              {"no higher than 110 F)", "no higher than 110 F"},
              {"140 °F or higher for 15 s", "140 °F or higher"},
              {"boiling water", "boiling"},
              {"350 degrees", "350 degrees"}},
             temperature_kinds, reading("en", System::us));
  check_rows({{"1 h 30 min, covered", "1 h 30 min"},
              {"1 h 30, covered", "1 h 30"},
              {"1 h 12 trays", "1 h"},
              {"10 minutes.", "10 minutes"},
              {"20 minutes to 1/2 hour", "20 minutes to 1/2 hour"},
              {"overnight in the fridge", "overnight"},
              {"4 h", "4 h"},
              {"half an hour later", "half an hour"}},
             time_kinds, reading("en"));
}

TEST_CASE("a sentence in another language keeps its own little words", "[find]") {
  check_rows({{"5 in die Form", ""}, {"250 g Butter", "250 g"}, {"2 EL Zucker", "2 EL"}, {"2 cups Mehl", "2 cups"}},
             no_count, reading("de", System::us));
  check_rows({{"2 c. à s. de sucre", "2 c. à s."}, {"20 cl de lait", "20 cl"}, {"1 kg 500 de farine", "1 kg"}},
             no_count, reading("fr"));
  check_rows({{"2 cdas. de azúcar", "2 cdas."}, {"100 g al final", "100 g"}}, no_count, reading("es"));
}

TEST_CASE("a figure that stands there but cannot be read says why", "[find]") {
  const Found cup = find_amount("1 cup flour", amount_kinds, reading("en"));
  CHECK(cup.used == 0);
  REQUIRE(cup.fault);
  CHECK(cup.fault->rule == "ambiguous-unit");
  const Found comma = find_amount("1,500 g flour", amount_kinds, reading("en"));
  CHECK(comma.used == 0);
  REQUIRE(comma.fault);
  CHECK(comma.fault->rule == "ambiguous-number");
}

TEST_CASE("long runs of digits and spaces stay quick", "[find]") {
  const std::string digits(200000, '7');
  CHECK(find_amount(digits, amount_kinds, reading("en")).used == 0);
  const std::string spaces = "1" + std::string(200000, ' ') + "g";
  CHECK(read_amount(spaces, amount_kinds, reading("en")));
  const std::string words(200000, 'x');
  CHECK_FALSE(read_amount("1 " + words, amount_kinds, reading("en")));
  std::string parts = "1 kg";
  for (int i = 0; i < 20000; ++i) parts += " 1 g + 1 kg";
  CHECK_FALSE(read_amount(parts, amount_kinds, reading("en")));
  std::string groups = "1";
  for (int i = 0; i < 50000; ++i) groups += ",234";
  CHECK_FALSE(read_amount(groups + " g", amount_kinds, reading("en")));
}

}  // namespace
