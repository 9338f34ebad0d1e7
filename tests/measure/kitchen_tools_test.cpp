#include <catch2/catch.hpp>

#include <string>

#include "core/measure/kitchen_tools.h"
#include "core/measure/write.h"

namespace {

using namespace tamis::measure;
using tamis::base::Ratio;

const Tolerance usual;
const Tolerance strict{Ratio(1, 100)};

std::string shown(const Rounded& rounded) {
  Writing writing;
  writing.no_break = false;
  return write_amount(rounded.amount, writing);
}

Ratio exact(const char* text) { return *Ratio::parse(text); }

struct Row {
  const char* value;
  const char* expected;
};

TEST_CASE("grams are shown as the scales read them", "[rounding]") {
  const KitchenTools tools;
  for (const Row& row : {Row{"187.5", "188 g"}, Row{"3.44", "3.4 g"}, Row{"12.4", "12 g"}, Row{"250", "250 g"},
                         Row{"999.7", "1 kg"}, Row{"1234.5", "1.235 kg"}, Row{"2268", "2.27 kg"},
                         Row{"7257.47", "7.26 kg"}, Row{"33333", "33.35 kg"}, Row{"0", "0 g"}}) {
    CAPTURE(row.value);
    CHECK(shown(round_mass(exact(row.value), System::metric, tools, usual)) == row.expected);
  }
}

TEST_CASE("a cup and a half of flour is 188 g, and what that costs is known exactly", "[rounding]") {
  // 1 1/2 US cups at 125 g a cup.
  const Rounded flour = round_mass(Ratio(375, 2), System::metric, KitchenTools(), usual);
  CHECK(flour.exact == Ratio(375, 2));
  CHECK(flour.error == Ratio(1, 2));
  CHECK(flour.share == Approx(0.5 / 187.5));
  CHECK(flour.within);
  CHECK(flour.better.empty());
}

TEST_CASE("a strict food is weighed finer where the scales allow it", "[rounding]") {
  const KitchenTools tools;
  CHECK(shown(round_mass(exact("12.4"), System::metric, tools, strict)) == "12.4 g");
  const Rounded little = round_mass(exact("0.34"), System::metric, tools, strict);
  CHECK_FALSE(little.within);
  CHECK(little.better == "weigh 0.34 g on scales that read 0.001 g");
  const Rounded less = round_mass(exact("3.44"), System::metric, tools, strict);
  CHECK_FALSE(less.within);
  CHECK(less.better == "weigh 3.44 g on scales that read 0.01 g");
}

TEST_CASE("coarse scales make coarse figures", "[rounding]") {
  KitchenTools tools;
  tools.scales = {{5, 10000}};
  CHECK(shown(round_mass(exact("187.5"), System::metric, tools, usual)) == "190 g");
  const Rounded yeast = round_mass(7, System::metric, tools, strict);
  CHECK(shown(yeast) == "5 g");
  CHECK_FALSE(yeast.within);
  CHECK(yeast.better == "weigh 7 g on scales that read 0.1 g");
}

TEST_CASE("ounces and pounds", "[rounding]") {
  const KitchenTools tools;
  for (const Row& row : {Row{"28", "1 oz"}, Row{"35", "1 ¼ oz"}, Row{"250", "8 ¾ oz"}, Row{"454", "1 lb"},
                         Row{"999.7", "2 lb 3 ½ oz"}, Row{"2268", "5 lb"}, Row{"5000", "11 lb"},
                         Row{"7.3", "¼ oz"}}) {
    CAPTURE(row.value);
    CHECK(shown(round_mass(exact(row.value), System::us, tools, usual)) == row.expected);
    CHECK(shown(round_mass(exact(row.value), System::imperial, tools, usual)) == row.expected);
  }
  CHECK(shown(round_mass(exact("12.4"), System::us, tools, usual)) == "0.45 oz");
}

TEST_CASE("millilitres and litres as jugs and spoons show them", "[rounding]") {
  const KitchenTools tools;
  for (const Row& row : {Row{"1.2322", "1.25 ml"}, Row{"4.929", "5 ml"}, Row{"7.393", "7.5 ml"}, Row{"14.787", "15 ml"},
                         Row{"29.574", "30 ml"}, Row{"59.147", "60 ml"}, Row{"78.863", "80 ml"},
                         Row{"118.294", "120 ml"}, Row{"236.588", "240 ml"}, Row{"473.176", "470 ml"},
                         Row{"946.353", "950 ml"}, Row{"996", "1 l"}, Row{"3785.41", "3.8 l"}}) {
    CAPTURE(row.value);
    const Rounded rounded = round_volume(exact(row.value), System::metric, tools, usual);
    CHECK(shown(rounded) == row.expected);
    CHECK(rounded.within);
  }
}

TEST_CASE("US spoons and cups are combined in few fillings", "[rounding]") {
  const KitchenTools tools;
  for (const Row& row : {Row{"0.6", "⅛ tsp"}, Row{"5", "1 tsp"}, Row{"7.39", "1 ½ tsp"}, Row{"15", "1 tbsp"},
                         Row{"30", "2 tbsp"}, Row{"60", "¼ cup"}, Row{"80", "⅓ cup"}, Row{"120", "½ cup"},
                         Row{"240", "1 cup"}, Row{"250", "1 cup 1 tbsp"}, Row{"266.16", "1 cup 2 tbsp"},
                         Row{"300", "1 ¼ cups"}, Row{"354.9", "1 ½ cups"}, Row{"500", "2 cups 2 tbsp"},
                         Row{"946.4", "1 qt"}, Row{"1000", "1 qt ¼ cup"}, Row{"1419.5", "1 ½ qt"}, Row{"3785", "1 gal"},
                         Row{"5000", "1 gal 1 qt 1 cup"}}) {
    CAPTURE(row.value);
    const Rounded rounded = round_volume(exact(row.value), System::us, tools, usual);
    CHECK(shown(rounded) == row.expected);
    CHECK(rounded.within);
  }
}

TEST_CASE("a near figure in fewer fillings goes before a nearer one", "[rounding]") {
  const KitchenTools tools;
  const Tolerance dough{Ratio(2, 100)};
  for (const Row& row : {Row{"350", "1 ½ cups"}, Row{"107", "⅓ cup 2 tbsp"},
                         Row{"177", "¾ cup"}, Row{"475", "2 cups"}, Row{"81", "⅓ cup ½ tsp"}}) {
    CAPTURE(row.value);
    CHECK(shown(round_volume(exact(row.value), System::us, tools, dough)) == row.expected);
  }
  CHECK(shown(round_volume(350, System::us, tools, usual)) == "1 ½ cups");
  CHECK(shown(round_volume(200, System::us, tools, usual)) == "⅔ cup 3 tbsp");
}

TEST_CASE("only spoons that are in the set are used", "[rounding]") {
  const Ratio tablespoon = unit_by_id("tbsp-us")->to_base;
  KitchenTools tools;
  CHECK(shown(round_volume(tablespoon * Ratio(3, 2), System::us, tools, usual)) == "1 tbsp 1 ½ tsp");
  tools.spoons.push_back({Ratio(1, 2), unit_by_id("tbsp-us")});
  CHECK(shown(round_volume(tablespoon * Ratio(3, 2), System::us, tools, usual)) == "1 ½ tbsp");
  tools.spoons = {{Ratio(1, 2), unit_by_id("tsp-us")}, {1, unit_by_id("tsp-us")}};
  CHECK(shown(round_volume(tablespoon, System::us, tools, usual)) == "3 tsp");
}

TEST_CASE("no spoon or cup is asked for that the set does not hold, whatever the volume", "[rounding]") {
  const KitchenTools tools;
  for (int tenths = 5; tenths < 60000; tenths += 7 + tenths / 20) {
    const Rounded made = round_volume(Ratio(tenths, 10), System::us, tools, usual);
    CAPTURE(tenths, shown(made));
    CHECK(made.amount.low.size() <= 3);
    CHECK((made.within || tenths < 100));
    for (const Quantity& part : made.amount.low) {
      const bool whole = part.unit->id == "tbsp-us";
      CHECK((!whole || part.value.whole()));
      CHECK(part.value.denominator() <= (part.unit->id == "tsp-us" ? 8 : 4));
    }
  }
}

TEST_CASE("an exact figure stays exact in its own system", "[rounding]") {
  const Ratio tablespoon = unit_by_id("tbsp-us")->to_base;
  const KitchenTools tools;
  CHECK(shown(round_volume(tablespoon * 18, System::us, tools, usual)) == "1 cup 2 tbsp");
  CHECK(shown(round_volume(tablespoon * 33, System::us, tools, usual)) == "2 cups 1 tbsp");
  CHECK(round_volume(tablespoon * 33, System::us, tools, usual).error == Ratio(0));
}

TEST_CASE("imperial pints, fluid ounces and spoons", "[rounding]") {
  const KitchenTools tools;
  for (const Row& row : {Row{"5", "1 tsp"}, Row{"15", "1 tbsp"}, Row{"284.13", "½ pint"}, Row{"568.26", "1 pint"},
                         Row{"100", "3 ½ fl oz"}, Row{"300", "10 ½ fl oz"}, Row{"1000", "1 ¾ pints"},
                         Row{"4546.09", "1 gal"}}) {
    CAPTURE(row.value);
    CHECK(shown(round_volume(exact(row.value), System::imperial, tools, usual)) == row.expected);
  }
}

TEST_CASE("too small a volume is better weighed", "[rounding]") {
  const Rounded drop = round_volume(exact("0.05"), System::us, KitchenTools(), strict);
  CHECK_FALSE(drop.within);
  CHECK(drop.better == "weigh it: no spoon or jug comes near enough");
}

TEST_CASE("a kitchen without a third of a cup does without it", "[rounding]") {
  KitchenTools tools;
  tools.cups = {{Ratio(1, 2), unit_by_id("cup-us")}, {1, unit_by_id("cup-us")}};
  CHECK(shown(round_volume(exact("78.86"), System::us, tools, usual)) == "5 tbsp 1 tsp");
}

TEST_CASE("lengths", "[rounding]") {
  const KitchenTools tools;
  for (const Row& row : {Row{"3", "3 mm"}, Row{"12.7", "1.3 cm"}, Row{"25.4", "2.5 cm"}, Row{"63.5", "6.5 cm"},
                         Row{"203.2", "20 cm"}, Row{"228.6", "23 cm"}, Row{"254", "25 cm"}, Row{"304.8", "30 cm"}}) {
    CAPTURE(row.value);
    CHECK(shown(round_length(exact(row.value), System::metric, tools)) == row.expected);
  }
  for (const Row& row : {Row{"3", "⅛ in"}, Row{"6", "¼ in"}, Row{"20", "¾ in"}, Row{"50", "2 in"}, Row{"63.5", "2 ½ in"},
                         Row{"160", "6 ¼ in"}, Row{"200", "8 in"}, Row{"240", "9 ½ in"}, Row{"260", "10 ¼ in"}}) {
    CAPTURE(row.value);
    const Rounded rounded = round_length(exact(row.value), System::us, tools);
    CHECK(shown(rounded) == row.expected);
    CHECK(rounded.within);
  }
}

TEST_CASE("oven figures are those of the dial, and the usual ones go there and back", "[rounding]") {
  struct Oven {
    int celsius, fahrenheit;
    bool back;
  };
  const KitchenTools tools;
  for (const Oven& row : {Oven{120, 250, true}, Oven{150, 300, true}, Oven{160, 325, true}, Oven{170, 340, true},
                          Oven{180, 350, true}, Oven{190, 375, true}, Oven{200, 400, true}, Oven{220, 425, true},
                          Oven{230, 450, true}, Oven{250, 475, true}, Oven{165, 325, false}, Oven{175, 350, false}}) {
    CAPTURE(row.celsius);
    const Rounded fahrenheit = round_oven(row.celsius, Scale::fahrenheit, tools);
    CHECK(fahrenheit.amount.low.front().value == Ratio(row.fahrenheit));
    const Rounded celsius = round_oven(fahrenheit.amount.low_base(), Scale::celsius, tools);
    CHECK((celsius.amount.low.front().value == Ratio(row.celsius)) == row.back);
  }
  KitchenTools fine;
  fine.oven_step_f = 5;
  fine.oven_step_c = 1;
  CHECK(shown(round_oven(180, Scale::fahrenheit, fine)) == "355 °F");
  CHECK(shown(round_oven(165, Scale::celsius, fine)) == "165 °C");
}

TEST_CASE("a food thermometer reads its own step, and a limit moves to its strict side", "[rounding]") {
  const KitchenTools tools;
  CHECK(shown(round_food_temperature(82, Scale::fahrenheit, tools)) == "180 °F");
  CHECK(shown(round_food_temperature(Ratio(665, 9), Scale::celsius, tools)) == "74 °C");
  CHECK(shown(round_food_temperature(63, Scale::fahrenheit, tools)) == "145 °F");
  CHECK(shown(round_food_temperature(63, Scale::fahrenheit, tools, Toward::up)) == "146 °F");
  CHECK(shown(round_food_temperature(38, Scale::fahrenheit, tools, Toward::down)) == "100 °F");
  CHECK(shown(round_food_temperature(Ratio(220, 9), Scale::celsius, tools, Toward::down)) == "24 °C");
  CHECK(shown(round_food_temperature(5, Scale::fahrenheit, tools, Toward::up)) == "41 °F");
  CHECK(shown(round_food_temperature(exact("-18.3"), Scale::celsius, tools, Toward::up)) == "−18 °C");
  CHECK(shown(round_food_temperature(exact("-18.3"), Scale::celsius, tools, Toward::down)) == "−19 °C");
}

}  // namespace
