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

void check_rows(std::initializer_list<Row> rows, const Reading& how, Kinds kinds = amount_kinds) {
  for (const Row& row : rows) {
    CAPTURE(row.text, how.language);
    CHECK(dump(read_amount(row.text, kinds, how)) == row.expected);
  }
}

TEST_CASE("masses, volumes, lengths and counts are read as English cooks write them", "[read]") {
  check_rows({{"250 g", "250 g"},
              {"250g", "250 g"},
              {"250 G", "250 g"},
              {"  250 g ", "250 g"},
              {"250 grams", "250 g"},
              {"1.5 kg", "3/2 kg"},
              {".473 L", "473/1000 l"},
              {"20 ml", "20 ml"},
              {"20 mL", "20 ml"},
              {"2 cm", "2 cm"},
              {"3 oz", "3 oz"},
              {"3 ounces", "3 oz"},
              {"2 lbs", "2 lb"},
              {"2 lb.", "2 lb"},
              {"4", "4 piece"},
              {"four", "4 piece"},
              {"12 each", "12 each"},
              {"4 lf", "4 leaf"},
              {"2 leaves", "2 leaf"},
              {"a dozen", "1 dozen"},
              {"half a dozen", "1/2 dozen"},
              {"1 1/2 dozen", "3/2 dozen"},
              {"1/4 box", "1/4 box"},
              {"2 sprigs", "2 sprig"},
              {"1 No. 10 can", "1 can-no-10"},
              {"1/2 No. 10 can", "1/2 can-no-10"},
              {"2 #10 cans", "2 can-no-10"},
              {"1 No. 2 1/2 can", "1 can-no-2-1/2"},
              {"1 spoonful", "1 spoonful"},
              {"a pinch", "1 pinch"},
              {"pinch", "1 pinch"},
              {"a drop", "1 drop"},
              {"2-inch", "2 in"},
              {"12\"", "12 in"},
              {"1 cup-us", "1 cup-us"},
              {"1 label cup", "1 cup-label-us"},
              {"3 dry pints", "3 dry-pint-us"}},
             reading("en"));
}

TEST_CASE("spoons, cups and pints mean those of the declared system", "[read]") {
  check_rows({{"1 cup", "1 cup-us"},
              {"1 c", "1 cup-us"},
              {"1 c.", "1 cup-us"},
              {"2 Tbsp", "2 tbsp-us"},
              {"2 tbsp.", "2 tbsp-us"},
              {"2 T", "2 tbsp-us"},
              {"2 t", "2 tsp-us"},
              {"3 tablespoonfuls", "3 tbsp-us"},
              {"8 fl oz", "8 floz-us"},
              {"8 fl. oz.", "8 floz-us"},
              {"8 fl\u00A0oz", "8 floz-us"},
              {"1 pint", "1 pint-us"},
              {"2 qts", "2 quart-us"},
              {"1 gallon", "1 gallon-us"},
              {"half a cup", "1/2 cup-us"},
              {"1 quart", "1 quart-us"}},
             reading("en", System::us));
  check_rows({{"1 cup", "1 cup-imperial"}, {"1 pint", "1 pint-imperial"}, {"2 tbsp", "2 tbsp-imperial"}},
             reading("en", System::imperial));
  check_rows({{"1 cup", "1 cup-metric"}, {"2 tbsp", "2 tbsp-metric"}, {"1 pint", "ambiguous-unit"}},
             reading("en", System::metric));
  check_rows({{"1 cup", "ambiguous-unit"},
              {"1 pint", "ambiguous-unit"},
              {"2 fl oz", "ambiguous-unit"},
              {"2 tbsp", "ambiguous-unit"},
              {"1 gill", "ambiguous-unit"}},
             reading("en"));
}

TEST_CASE("numbers are read whole, mixed, as fractions and with glyphs", "[read]") {
  check_rows({{"1/2 cup", "1/2 cup-us"},
              {"½ cup", "1/2 cup-us"},
              {"1 1/2 cups", "3/2 cup-us"},
              {"1-1/2 cups", "3/2 cup-us"},
              {"1½ cups", "3/2 cup-us"},
              {"1 ½ cups", "3/2 cup-us"},
              {"1\u00A0½\u00A0cups", "3/2 cup-us"},
              {"1-½ cups", "3/2 cup-us"},
              {"1⁄2 cup", "1/2 cup-us"},
              {"2 and 1/2 cups", "5/2 cup-us"},
              {"2 and a half cups", "5/2 cup-us"},
              {"15-2/3 lb", "47/3 lb"},
              {"4 4/5 oz", "24/5 oz"},
              {"⅞ cup", "7/8 cup-us"},
              {"3/2 cup", "3/2 cup-us"},
              {"1 500 g", "1500 g"},
              {"1\u202F500 g", "1500 g"},
              {"1'500 g", "1500 g"},
              {"1 234 567 g", "1234567 g"},
              {"1,234,567 g", "1234567 g"},
              {"1,234.5 g", "2469/2 g"},
              {"0.125 g", "1/8 g"}},
             reading("en", System::us));
}

TEST_CASE("parts of one kind add up", "[read]") {
  check_rows({{"1 lb 2 oz", "1 lb + 2 oz"},
              {"1 qt 1 1/2 cups 1 Tbsp 2 1/3 tsp", "1 quart-us + 3/2 cup-us + 1 tbsp-us + 7/3 tsp-us"},
              {"1 No. 10 can + 1 1/2 cups", "1 can-no-10 + 3/2 cup-us"},
              {"2 No. 10 cans + 3 cups", "2 can-no-10 + 3 cup-us"},
              {"1 gal 3-1/2 qts", "1 gallon-us + 7/2 quart-us"},
              {"2 qts 3-7/8 cup", "2 quart-us + 31/8 cup-us"},
              {"1/4 cup 2-1/3 tbsp", "1/4 cup-us + 7/3 tbsp-us"},
              {"1 cup plus 2 tbsp", "1 cup-us + 2 tbsp-us"},
              {"1 cup and 2 tbsp", "1 cup-us + 2 tbsp-us"},
              {"2 tbsp + 1 cup", "2 tbsp-us + 1 cup-us"},
              {"1 cup 2 cups", "unreadable-amount"},
              {"2 tbsp 1 cup", "unreadable-amount"},
              {"1 cup 2 oz", "unreadable-amount"},
              {"1 lb 2 foo", "unknown-unit"}},
             reading("en", System::us));
}

TEST_CASE("ranges and bounds say so", "[read]") {
  check_rows({{"3–4 cups", "3 cup-us .. 4 cup-us"},
              {"3-4 cups", "3 cup-us .. 4 cup-us"},
              {"3 - 4 cups", "3 cup-us .. 4 cup-us"},
              {"3 to 4 cups", "3 cup-us .. 4 cup-us"},
              {"3 or 4 cloves", "3 clove .. 4 clove"},
              {"between 3 and 4 cups", "3 cup-us .. 4 cup-us"},
              {"from 3 to 4 cups", "3 cup-us .. 4 cup-us"},
              {"1/2–3/4 cup", "1/2 cup-us .. 3/4 cup-us"},
              {"½–¾ cup", "1/2 cup-us .. 3/4 cup-us"},
              {"1-1/2 to 2 cups", "3/2 cup-us .. 2 cup-us"},
              {"1/2 cup to 1 pint", "1/2 cup-us .. 1 pint-us"},
              {"5-6 pounds", "5 lb .. 6 lb"},
              {"3–4", "3 piece .. 4 piece"},
              {"about 2 cups", "~ 2 cup-us"},
              {"approx. 2 cups", "~ 2 cup-us"},
              {"2 cups approx.", "~ 2 cup-us"},
              {"~2 cups", "~ 2 cup-us"},
              {"about 3–4 cups", "~ 3 cup-us .. 4 cup-us"},
              {"at least 3 cups", ">= 3 cup-us"},
              {"3 cups or more", ">= 3 cup-us"},
              {"3 or more cups", "unreadable-amount"},
              {"at most 3 cups", "<= 3 cup-us"},
              {"up to 3 cups", "<= 3 cup-us"},
              {"no more than 3 cups", "<= 3 cup-us"},
              {"3 cups or less", "<= 3 cup-us"},
              {"4–3 cups", "reversed-range"},
              {"1 lb to 2 oz", "reversed-range"},
              {"1–1/2 cups", "reversed-range"}},
             reading("en", System::us));
}

TEST_CASE("words of the trade stand where a figure could", "[read]") {
  check_rows({{"to taste", "word to-taste"},
              {"To taste", "word to-taste"},
              {"as needed", "word as-needed"},
              {"a little", "word a-little"},
              {"some", "word some"},
              {"a litle", "unknown-trade-word"},
              {"overnight", "wrong-kind"}},
             reading("en"));
}

TEST_CASE("what is not understood is refused by name", "[read]") {
  check_rows({{"", "unreadable-amount"},
              {"99999999999999999999999 g", "unreadable-amount"},
              {"999999999999999999 g", "999999999999999999 g"},
              {"   ", "unreadable-amount"},
              {"g", "unreadable-amount"},
              {"250 gramz", "unknown-unit"},
              {"250", "250 piece"},
              {"2 cups flour", "unreadable-amount"},
              {"4 eggs", "unknown-unit"},
              {"1 hour", "wrong-kind"},
              {"180 °C", "wrong-kind"},
              {"1,500 g", "ambiguous-number"},
              {"1,5 g", "unreadable-amount"},
              {"0,500 g", "unreadable-amount"},
              {"1,50 g", "unreadable-amount"},
              {"1/0 cup", "unreadable-amount"},
              {"1/2/3 cup", "unreadable-amount"},
              {"1.2.3 g", "unreadable-amount"},
              {"½½ g", "unreadable-amount"},
              {"½5 g", "unreadable-amount"},
              {"-5 g", "unknown-trade-word"},
              {"99999999999999999999 g", "unreadable-amount"},
              {"10000000000000000 kg", "unreadable-amount"},
              {"250 g/kg", "unreadable-amount"},
              {"flour", "unknown-trade-word"},
              {"\xFF\xFE", "unknown-trade-word"}},
             reading("en", System::us));
}

TEST_CASE("only the wanted kinds are read", "[read]") {
  const Reading how = reading("en", System::us);
  CHECK(dump(read_amount("4", set_of(Kind::mass), how)) == "unreadable-amount");
  CHECK(dump(read_amount("250 g", set_of(Kind::mass), how)) == "250 g");
  CHECK(dump(read_amount("250 g", set_of(Kind::volume), how)) == "wrong-kind");
  CHECK(dump(read_amount("2 cm", length_kinds, how)) == "2 cm");
}

TEST_CASE("the comma is what the language or the document says", "[read]") {
  check_rows({{"1,5 kg", "3/2 kg"},
              {"1,500 kg", "3/2 kg"},
              {"1.500 g", "ambiguous-number"},
              {"1.5 kg", "unreadable-amount"},
              {"1.234,5 g", "2469/2 g"},
              {"1 500 g", "1500 g"},
              {"1 500,5 g", "3001/2 g"},
              {",5 l", "1/2 l"}},
             reading("de"));
  check_rows({{"1.5 kg", "3/2 kg"}, {"1,5 kg", "unreadable-amount"}}, reading("de-CH"));
  check_rows({{"1.5 kg", "3/2 kg"}}, reading("es-MX"));
  check_rows({{"1,500 g", "1500 g"}, {"1.5 g", "3/2 g"}}, reading("en", System::none, '.'));
  check_rows({{"1,500 g", "3/2 g"}, {"1.500 g", "1500 g"}}, reading("en", System::none, ','));
}

TEST_CASE("French amounts", "[read]") {
  check_rows({{"1 c. à s.", "1 tbsp-metric"},
              {"1 c à s", "1 tbsp-metric"},
              {"2 cuillères à soupe", "2 tbsp-metric"},
              {"2 cuillerées à café", "2 tsp-metric"},
              {"1 cs", "1 tbsp-metric"},
              {"1 cc", "1 tsp-metric"},
              {"une pincée", "1 pinch"},
              {"2 à 3 gousses", "2 clove .. 3 clove"},
              {"1/2 l", "1/2 l"},
              {"20 cl", "20 cl"},
              {"4 feuilles", "4 leaf"},
              {"environ 200 g", "~ 200 g"},
              {"au moins 200 g", ">= 200 g"},
              {"200 g au plus", "<= 200 g"},
              {"une livre", "1 pfund"},
              {"deux", "2 piece"},
              {"une douzaine", "1 dozen"},
              {"selon le goût", "word to-taste"},
              {"un peu", "word a-little"},
              {"1 tasse", "ambiguous-unit"},
              {"1 kilo et demi", "3/2 kg"}},
             reading("fr"));
  check_rows({{"1 tasse", "1 cup-metric"}, {"1 c. à s.", "1 tbsp-metric"}}, reading("fr", System::metric));
  check_rows({{"1 tasse", "1 cup-us"}, {"1 c. à s.", "1 tbsp-us"}, {"une livre", "1 lb"}}, reading("fr", System::us));
}

TEST_CASE("German amounts", "[read]") {
  check_rows({{"2 EL", "2 tbsp-metric"},
              {"1 ½ TL", "3/2 tsp-metric"},
              {"1 Prise", "1 pinch"},
              {"eine Prise", "1 pinch"},
              {"2–3 Zehen", "2 clove .. 3 clove"},
              {"2 bis 3 Zehen", "2 clove .. 3 clove"},
              {"3 Blatt", "3 leaf"},
              {"1 Pck.", "1 packet"},
              {"1 Päckchen", "1 packet"},
              {"ca. 200 g", "~ 200 g"},
              {"mindestens 200 g", ">= 200 g"},
              {"höchstens 200 g", "<= 200 g"},
              {"1 Pfund", "1 pfund"},
              {"10 dag", "10 dag"},
              {"anderthalb Liter", "3/2 l"},
              {"nach Geschmack", "word to-taste"},
              {"etwas", "word a-little"},
              {"ein halber Liter", "1/2 l"}},
             reading("de"));
}

TEST_CASE("Spanish amounts", "[read]") {
  check_rows({{"2 cucharadas", "2 tbsp-metric"},
              {"1 cucharadita", "1 tsp-metric"},
              {"1 cdta.", "1 tsp-metric"},
              {"una pizca", "1 pinch"},
              {"2 a 3 dientes", "2 clove .. 3 clove"},
              {"media docena", "1/2 dozen"},
              {"unos 200 g", "~ 200 g"},
              {"como máximo 200 g", "<= 200 g"},
              {"al menos 200 g", ">= 200 g"},
              {"1 kilo y medio", "3/2 kg"},
              {"al gusto", "word to-taste"}},
             reading("es"));
}

TEST_CASE("a language nobody knows is read with English words", "[read]") {
  check_rows({{"250 g", "250 g"}, {"1.5 kg", "3/2 kg"}, {"about 2 lb", "~ 2 lb"}}, reading("it"));
}

TEST_CASE("a refusal says what, where and what to write", "[read]") {
  struct Refusal {
    const char* text;
    unsigned begin, end;
    const char* message;
    const char* advice;
  };
  const Reading none = reading("en");
  for (const Refusal& row :
       {Refusal{"  250 gramz", 6, 11, "\"gramz\" is no unit of mass, volume, length or count", "did you mean \"gram\"?"},
        Refusal{"1 cup", 2, 5,
                "\"cup\" can mean 236.6 ml in US customary measure, 284.1 ml in imperial measure or 250 ml in metric "
                "measure; nothing says which",
                "say whose measure it is (units us, imperial or metric), or write millilitres"},
        Refusal{"1,500 g", 0, 5, "\"1,500\" can be 1500 or 1.500; the sign \",\" does not say which",
                "write 1500 or 1.500, or declare the decimal sign"},
        Refusal{"1,5 g", 0, 3, "\"1,5\" has a comma where a decimal point was expected", "write 1.5"},
        Refusal{"1 hour", 2, 6, "\"hour\" measures time; mass, volume, length or count was expected", ""},
        Refusal{"4–3 g", 0, 7, "the range 4–3 g runs from the larger figure to the smaller",
                "write the smaller figure first"},
        Refusal{"a litle", 0, 7, "\"a litle\" is neither a figure of mass, volume, length or count nor a word of the trade",
                "did you mean \"a little\"?"}}) {
    CAPTURE(row.text);
    const auto read = read_amount(row.text, amount_kinds, none);
    REQUIRE_FALSE(read);
    CHECK(read.fault().where.begin == row.begin);
    CHECK(read.fault().where.end == row.end);
    CHECK(read.fault().message == row.message);
    CHECK(read.fault().advice == row.advice);
  }
}

}  // namespace
