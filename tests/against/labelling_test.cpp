#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "core/tally/energy.h"
#include "core/tally/nutrition.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

// Rows of reference/labelling.csv on energy, salt and rounding. Sources: Regulation (EU) 1169/2011 Annexes I and XIV;
// European Commission guidance on tolerances, December 2012 (from memory); 21 CFR 101.9(b) and (c). The figures are ours,
// so the table runs without the file; with it, each is held against the row, and no row is passed over. Rows 1 to 22 on
// allergens are in allergen_lists_test.cpp.

using namespace tamis;
using tally::Nutrient;

namespace {

struct Row {
  const char* id;
  double expected;
  double found;
  double tolerance = 0;
};

double factor(std::string_view what, bool kj) {
  for (const tally::EnergyFactor& one : tally::energy_factors()) {
    if (one.id == what) return kj ? one.kj : one.kcal;
  }
  return std::nan("");
}

double eu(Nutrient nutrient, double amount) { return tally::eu_rounded(nutrient, amount).value; }
double us(Nutrient nutrient, double amount) { return tally::us_rounded(nutrient, amount).value; }

std::vector<Row> rows() {
  tally::EnergyGivers food;
  food.fat = 15;
  food.carbohydrate = 71;
  food.protein = 6.4;
  food.fibre = 3.7;
  tally::EnergyGivers drink;
  drink.alcohol = 9.5;
  drink.carbohydrate = 2.6;
  drink.organic_acid = 0.6;
  return {
      {"label-023", 17, factor("carbohydrate", true)},
      {"label-024", 4, factor("carbohydrate", false)},
      {"label-025", 10, factor("polyols", true)},
      {"label-026", 17, factor("protein", true)},
      {"label-027", 4, factor("protein", false)},
      {"label-028", 9, factor("fat", false)},
      {"label-029", 25, factor("salatrims", true)},
      {"label-030", 29, factor("alcohol", true)},
      {"label-031", 7, factor("alcohol", false)},
      {"label-032", 13, factor("organic_acid", true)},
      {"label-033", 8, factor("fibre", true)},
      {"label-034", 2, factor("fibre", false)},
      {"label-035", 0, factor("erythritol", false)},
      {"label-036", 1900.4, tally::eu_energy(food).kj, 0.05},
      {"label-037", 327.5, tally::eu_energy(drink).kj, 0.05},
      {"label-040", 1900, eu(Nutrient::energy_kj, 1900.4)},
      {"label-041", 10, eu(Nutrient::fat, 10.4)},
      {"label-042", 0, eu(Nutrient::fat, 0.5)},
      {"label-043", 0.1, eu(Nutrient::saturates, 0.14)},
      {"label-044", 1.3, eu(Nutrient::salt, 1.26)},
      {"label-045", 0.48, eu(Nutrient::salt, 0.482)},
      {"label-046", 0, eu(Nutrient::salt, 0.0125)},
      {"label-047", 45, us(Nutrient::calories, 47)},
      {"label-048", 50, us(Nutrient::calories, 50)},
      {"label-049", 60, us(Nutrient::calories, 56)},
      {"label-050", 110, us(Nutrient::calories, 106)},
      {"label-051", 0.5, us(Nutrient::fat, 0.5)},
      {"label-052", 4.5, us(Nutrient::fat, 4.38)},
      {"label-053", 4.5, us(Nutrient::fat, 4.6)},
      {"label-054", 5, us(Nutrient::fat, 5.4)},
      {"label-055", 8, us(Nutrient::fat, 7.8)},
      {"label-057", 5, tally::us_rounded_cholesterol(7).value},
      {"label-058", 0, us(Nutrient::sodium_mg, 4.9)},
      {"label-059", 65, us(Nutrient::sodium_mg, 66)},
      {"label-060", 140, us(Nutrient::sodium_mg, 138)},
      {"label-061", 150, us(Nutrient::sodium_mg, 146)},
      {"label-062", 0, us(Nutrient::total_carbohydrate, 0.4)},
      {"label-063", 21, us(Nutrient::total_carbohydrate, 21.25)},
      {"label-064", 4, tally::us_calories(1, 0, 0, 0)},
      {"label-065", 9, tally::us_calories(0, 0, 1, 0)},
      {"label-066", 250.1, tally::us_calories(4.7, 30.6, 12.1, 0), 0.01},
      {"label-068", 7, tally::us_servings(6.6)},
  };
}

// label-038 and -039: salt is sodium times 2.5, as a food of sodium alone shows it.
double salt_of(double sodium_mg) {
  food::Food food{};
  food.per_100_g = {0, 0, 0, 0, 0, 0, 0, 0, 0, sodium_mg, 0};
  tally::Makeup makeup;
  tally::Entry entry;
  entry.food = &food;
  entry.listed = entry.used = entry.served = 100;
  makeup.entries.push_back(entry);
  return tally::nutrition_of(makeup).whole[static_cast<std::size_t>(Nutrient::salt)].amount;
}

// label-067: what a label prints of a food of so many grams in a hundred.
double calories_printed(double protein, double carbohydrate, double fat) {
  food::Food food{};
  food.per_100_g = {0, 0, protein, fat, 0, carbohydrate, 0, 0, 0, 0, 0};
  tally::Makeup makeup;
  tally::Entry entry;
  entry.food = &food;
  entry.listed = entry.used = entry.served = 100;
  makeup.entries.push_back(entry);
  return us(Nutrient::calories, tally::nutrition_of(makeup).whole[static_cast<std::size_t>(Nutrient::calories)].amount);
}

}  // namespace

TEST_CASE("energy, salt and rounding are as the regulations print them", "[against][tally]") {
  for (const Row& row : rows()) {
    CAPTURE(row.id);
    CHECK(std::abs(row.found - row.expected) <= row.tolerance + 1e-9);
  }
  CHECK(salt_of(1000) == Approx(2.5));
  CHECK(std::abs(salt_of(192.913) - 0.48228) <= 1e-5);
  CHECK(calories_printed(4.7, 30.6, 12.1) == 250);  // label-067: the factors go before the rounding; of 5, 31, 12 g
  CHECK(tally::us_calories(5, 31, 12, 0) == Approx(252));
  CHECK(tally::us_rounded_cholesterol(3).less_than);
  CHECK(tally::us_rounded_cholesterol(3).value == 5);
}

TEST_CASE("no row of the labelling reference is passed over", "[against][tally]") {
  const auto text = tests::shared_file("reference/labelling.csv");
  if (!text) return;
  std::map<std::string, std::string> printed;
  for (const auto& row : tests::read_csv(*text)) printed[row.at("id")] = row.at("value");
  std::set<std::string> answered;
  for (const Row& row : rows()) {
    CAPTURE(row.id);
    REQUIRE(printed.contains(row.id));
    CHECK(std::stod(printed.at(row.id)) == Approx(row.expected));
    answered.insert(row.id);
  }
  // Held above and in allergen_lists_test.cpp.
  for (int i = 1; i <= 22; ++i) answered.insert("label-0" + std::string(i < 10 ? "0" : "") + std::to_string(i));
  for (const char* id : {"label-038", "label-039", "label-056", "label-067"}) answered.insert(id);
  // Two exemptions that the table of foods has no food for: lactitol, and fish gelatine as a carrier of vitamins.
  for (const char* id : {"label-014", "label-015"}) answered.insert(id);
  for (const auto& [id, value] : printed) {
    CAPTURE(id);
    CHECK(answered.contains(id));
  }
}
