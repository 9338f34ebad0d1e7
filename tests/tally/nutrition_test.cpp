#include <cmath>

#include "core/tally/energy.h"
#include "core/tally/nutrition.h"
#include "tests/tally/tallying.h"

using namespace tamis;
using tally::Nutrient;
using tests::tally_fiche;
using tests::tally_of;

namespace {

double amount(const tally::Figures& figures, Nutrient nutrient) { return figures[static_cast<std::size_t>(nutrient)].amount; }
double lacking(const tally::Figures& figures, Nutrient nutrient) { return figures[static_cast<std::size_t>(nutrient)].lacking; }

std::string text(const tally::Rounded& rounded) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%s%.*f", rounded.less_than ? "<" : "", rounded.digits, rounded.value);
  return buffer;
}

}  // namespace

// By hand from the rows of USDA SR28 (20081 flour, 01145 butter, 19336 icing sugar, 01123 egg, 02047 salt): the sweet
// pastry's 500, 250, 180, 100 and 4 g, of 1034 g 1000 g remaining.
TEST_CASE("the demo kitchen's sweet pastry has the nutrients that a sum by hand gives", "[tally]") {
  const auto tally = tests::demo_tally("base/sweet-pastry");
  const tally::Nutrition found = tally::nutrition_of(tally->makeup);
  REQUIRE(tally->makeup.mass == Approx(1000));
  const double left = 1000.0 / 1034;
  const double fat = left * (5 * 0.98 + 2.5 * 81.11 + 1.8 * 0 + 1 * 9.51);                     // 210.0 g
  const double protein = left * (5 * 10.33 + 2.5 * 0.85 + 1 * 12.56);                          // 64.1 g
  const double carbohydrate = left * (5 * (76.31 - 2.7) + 2.5 * 0.06 + 1.8 * 99.77 + 1 * 0.72);
  const double fibre = left * 5 * 2.7;
  CHECK(amount(found.whole, Nutrient::fat) == Approx(fat));
  CHECK(amount(found.whole, Nutrient::saturates) == Approx(left * (5 * 0.155 + 2.5 * 50.489 + 3.126)));
  CHECK(amount(found.whole, Nutrient::protein) == Approx(protein));
  CHECK(amount(found.whole, Nutrient::carbohydrate) == Approx(carbohydrate));
  CHECK(amount(found.whole, Nutrient::sugars) == Approx(left * (5 * 0.27 + 2.5 * 0.06 + 1.8 * 97.81 + 0.37)));
  CHECK(amount(found.whole, Nutrient::fibre) == Approx(fibre));
  CHECK(amount(found.whole, Nutrient::salt) == Approx(left * 0.0025 * (5 * 2 + 2.5 * 11 + 1.8 * 2 + 142 + 0.04 * 38758)));
  CHECK(amount(found.whole, Nutrient::energy_kj) == Approx(37 * fat + 17 * protein + 17 * carbohydrate + 8 * fibre));
  CHECK(amount(found.whole, Nutrient::energy_kcal) == Approx(9 * fat + 4 * protein + 4 * carbohydrate + 2 * fibre));
  for (const tally::Figure& figure : found.whole) CHECK(figure.lacking == 0);
}

// By hand from 01077 milk, 01125 yolk, 19335 sugar and the table's cream of 35 %, which has no figure for saturates,
// sugars and sodium: 1000, 250, 240 and 180 g; 3 % stay in the sieve, and the yield rounds 1619.9 g to 1600 g.
TEST_CASE("the custard, by the table's foods alone, says of which a figure is lacking", "[tally]") {
  const auto tally = tally_of(tests::project_file("tests/kitchen/base/custard.fiche.xml"));
  const tally::Nutrition found = tally::nutrition_of(tally->makeup);
  const double left = 1600.0 / 1670;
  CHECK(amount(found.whole, Nutrient::fat) == Approx(left * (10 * 3.25 + 2.5 * 35 + 2.4 * 26.54)));
  CHECK(amount(found.whole, Nutrient::protein) == Approx(left * (10 * 3.15 + 2.5 * 2.1 + 2.4 * 15.86)));
  // Lactose by itself is measured above the carbohydrate by difference: 5.05 g against 4.80 g; it counts as that.
  CHECK(amount(found.whole, Nutrient::sugars) == Approx(left * (10 * 4.80 + 2.4 * 0.56 + 1.8 * 99.80)));
  CHECK(lacking(found.whole, Nutrient::sugars) == Approx(left * 250));
  CHECK(lacking(found.whole, Nutrient::saturates) == Approx(left * 250));
  CHECK(lacking(found.whole, Nutrient::fat) == 0);
  REQUIRE(found.lacking.size() == 1);
  CHECK(found.lacking[0].food == "cream");
  CHECK(found.lacking[0].grams == Approx(left * 250));
}

TEST_CASE("components add up to the whole, and boiling water off takes no nutrient", "[tally]") {
  const char* path = GENERATE("desserts/quince-hazelnut-bay", "desserts/damson-almond-tart", "mains/roast-leg-of-lamb");
  const auto tally = tests::demo_tally(path);
  const tally::Nutrition found = tally::nutrition_of(tally->makeup);
  for (std::size_t i = 0; i < tally::nutrients; ++i) {
    double sum = 0;
    double missing = 0;
    for (const tally::Nutrition::Of& of : found.components) {
      sum += of.figures[i].amount;
      missing += of.figures[i].lacking;
    }
    CHECK(sum == Approx(found.whole[i].amount));
    CHECK(missing == Approx(found.whole[i].lacking));
  }
  const auto sugar_of = [](const std::string& attributes) {
    return amount(tally::nutrition_of(tally_of(tally_fiche("<component id=\"c\" title=\"C\"><ingredient id=\"m\" food=\"milk-whole\">1 kg</ingredient><step" +
                                                           attributes + ">Boil the <use of=\"m\">milk</use>.</step></component>"))
                                          ->makeup)
                      .whole,
                  Nutrient::sugars);
  };
  CHECK(sugar_of(" reduce-by=\"1/2\"") == Approx(sugar_of("")));
}

TEST_CASE("a food nobody knows, and one that is not weighed, are told apart from nothing", "[tally]") {
  const auto tally = tally_of(tally_fiche(R"(<component id="c" title="C"><ingredient id="a" name="house paste">200 g</ingredient>
<ingredient id="b" food="water">300 g</ingredient><ingredient id="s" food="salt" name="salt">to taste</ingredient>
<step>Mix <use of="a">paste</use>, <use of="s">salt</use> and <use of="b">water</use>.</step></component>)"));
  const tally::Nutrition found = tally::nutrition_of(tally->makeup);
  CHECK(amount(found.whole, Nutrient::fat) == 0);
  CHECK(lacking(found.whole, Nutrient::fat) == Approx(200));
  REQUIRE(found.lacking.size() == 1);
  CHECK(found.lacking[0].food == "house paste");
  CHECK(found.lacking[0].what.size() == tally::nutrients);
  CHECK(found.not_weighed == std::vector<std::string>{"salt"});
}

TEST_CASE("what a supplier declares goes before the usual food's figures", "[tally]") {
  const auto tally = tally_of(tally_fiche(R"(<component id="c" title="C"><ingredient id="a" food="house-cream">200 g</ingredient>
<step>Whip the <use of="a">cream</use>.</step></component>)"),
                              tests::kitchen_with(R"(<food id="house-cream" name="cream" like="cream-35"><declared fat="36" saturates="24" carbohydrate="2.9" sugars="2.9" protein="2" salt="0.07"/></food>)"));
  const tally::Nutrition found = tally::nutrition_of(tally->makeup);
  CHECK(amount(found.whole, Nutrient::fat) == Approx(72));
  CHECK(amount(found.whole, Nutrient::sugars) == Approx(5.8));
  CHECK(amount(found.whole, Nutrient::salt) == Approx(0.14));
  CHECK(lacking(found.whole, Nutrient::saturates) == 0);
}

// The ends of each step, both sides of it. European Commission guidance of December 2012 (from memory); 21 CFR 101.9(c).
TEST_CASE("figures are rounded as the European guidance and the American law say", "[tally]") {
  const auto eu = [](Nutrient nutrient, double amount) { return text(tally::eu_rounded(nutrient, amount)); };
  CHECK(eu(Nutrient::energy_kj, 0.4) == "0");
  CHECK(eu(Nutrient::energy_kj, 1900.5) == "1901");
  CHECK(eu(Nutrient::fat, 0.51) == "0.5");
  CHECK(eu(Nutrient::fat, 9.94) == "9.9");
  CHECK(eu(Nutrient::fat, 9.96) == "10");
  CHECK(eu(Nutrient::fat, 10.5) == "11");
  CHECK(eu(Nutrient::saturates, 0.1) == "0");
  CHECK(eu(Nutrient::saturates, 0.11) == "0.1");
  CHECK(eu(Nutrient::salt, 0.013) == "0.01");
  CHECK(eu(Nutrient::salt, 0.994) == "0.99");
  CHECK(eu(Nutrient::salt, 0.996) == "1.0");
  CHECK(eu(Nutrient::salt, 1) == "1.0");
  const auto us = [](Nutrient nutrient, double amount) { return text(tally::us_rounded(nutrient, amount)); };
  CHECK(us(Nutrient::calories, 4.9) == "0");
  CHECK(us(Nutrient::calories, 5) == "5");
  CHECK(us(Nutrient::calories, 52.5) == "50");
  CHECK(us(Nutrient::calories, 55) == "60");
  CHECK(us(Nutrient::saturates, 0.49) == "0");
  CHECK(us(Nutrient::saturates, 4.75) == "5");
  CHECK(us(Nutrient::sodium_mg, 5) == "5");
  CHECK(us(Nutrient::sodium_mg, 140) == "140");
  CHECK(us(Nutrient::sodium_mg, 141) == "140");
  CHECK(us(Nutrient::protein, 0.7) == "<1");
  CHECK(us(Nutrient::sugars, 0.4) == "0");
  CHECK(text(tally::us_rounded_cholesterol(1.9)) == "0");
  CHECK(tally::us_servings(1.6) == 2);
  CHECK(tally::us_servings(2.3) == 2.5);
  CHECK(tally::us_servings(5.4) == 5);
}
