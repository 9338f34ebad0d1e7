#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

#include "core/food/food.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

// Every figure of a food that names an SR28 row is the figure USDA printed for it: composition, refuse and
// household measures, against reference/usda_sr_excerpt.csv (USDA National Nutrient Database for Standard
// Reference, 28).

using namespace tamis;

namespace {

constexpr std::string_view release = "USDA SR28 ";

/// "01145" of "USDA SR28 01145, as ..."; empty when the source is another or the figures come from memory.
std::string row_number(std::string_view source) {
  if (source.substr(0, release.size()) != release || source.find("from memory") != std::string_view::npos)
    return {};
  return std::string(source.substr(release.size(), 5));
}

struct Column {
  const char* name;
  double food::Composition::*figure;
};
constexpr Column columns[] = {
    {"water_g", &food::Composition::water},       {"energy_kcal", &food::Composition::energy_kcal},
    {"protein_g", &food::Composition::protein},   {"fat_g", &food::Composition::fat},
    {"sat_fat_g", &food::Composition::saturated}, {"carbohydrate_g", &food::Composition::carbohydrate},
    {"sugars_g", &food::Composition::sugars},     {"fibre_g", &food::Composition::fibre},
    {"ash_g", &food::Composition::ash},           {"sodium_mg", &food::Composition::sodium_mg},
    {"alcohol_g", &food::Composition::alcohol},
};

bool same(const std::string& printed, double ours) {
  return printed.empty() ? std::isnan(ours) : std::strtod(printed.c_str(), nullptr) == ours;
}

/// Grams of one unit of each household measure a row prints: "5 leaves = 2.5" is 0.5.
std::vector<double> unit_masses(const tests::CsvRow& row) {
  std::vector<double> masses;
  for (const char* column : {"measure_1", "measure_2", "measure_3"}) {
    const std::string& text = row.at(column);
    const std::size_t equals = text.rfind(" = ");
    if (equals == std::string::npos) continue;
    const double amount = std::strtod(text.c_str(), nullptr);
    masses.push_back(std::strtod(text.c_str() + equals + 3, nullptr) / amount);
    // Some are of so many spoons, cups or fluid ounces inside the text: "1 serving 1/2 cup", "1 unit 2 large or 5
    // small".
    if (text.find("1/2 cup") != std::string::npos) masses.push_back(masses.back() * 2);
    if (text.find("2 large") != std::string::npos) masses.push_back(masses.back() / 2);
    if (text.find("liter") != std::string::npos) masses.push_back(masses.back() / 1000);
  }
  return masses;
}

std::map<std::string, tests::CsvRow> rows_of(const std::string& text) {
  std::map<std::string, tests::CsvRow> rows;
  for (auto& row : tests::read_csv(text)) rows[row.at("ndb_no")] = row;
  return rows;
}

}  // namespace

TEST_CASE("compositions that name a USDA row are the row's figures", "[against][food]") {
  const auto text = tests::shared_file("reference/usda_sr_excerpt.csv");
  if (!text) return;
  const auto rows = rows_of(*text);
  REQUIRE(rows.size() == 533);

  std::size_t compared = 0;
  for (const food::Food& food : food::foods()) {
    const std::string number = row_number(food.composition_source);
    if (number.empty()) continue;
    CAPTURE(food.id, number);
    REQUIRE(rows.count(number) == 1);
    const tests::CsvRow& row = rows.at(number);
    ++compared;
    for (const Column& column : columns) {
      CAPTURE(column.name, row.at(column.name), food.per_100_g.*column.figure);
      CHECK(same(row.at(column.name), food.per_100_g.*column.figure));
    }
    if (row_number(food.trim_source) == number) {
      CHECK(food.trim_share == std::strtod(row.at("refuse_pct").c_str(), nullptr) / 100);
    }
  }
  CHECK(compared >= 400);
}

TEST_CASE("household measures that name a USDA row are the row's figures", "[against][food]") {
  const auto text = tests::shared_file("reference/usda_sr_excerpt.csv");
  if (!text) return;
  const auto rows = rows_of(*text);
  std::size_t compared = 0;
  for (const food::Food& food : food::foods()) {
    for (const food::Measure& measure : food.measures) {
      const std::string number = row_number(measure.source);
      if (number.empty()) continue;
      CAPTURE(food.id, measure.what, measure.note, measure.grams, measure.source);
      REQUIRE(rows.count(number) == 1);
      bool found = false;
      for (const double grams : unit_masses(rows.at(number)))
        found = found || std::abs(grams - measure.grams) < 0.0001;
      CHECK(found);
      ++compared;
    }
  }
  CHECK(compared >= 600);
}

TEST_CASE("what can be looked up is not from memory", "[against][food]") {
  const auto text = tests::shared_file("reference/usda_sr_excerpt.csv");
  if (!text) return;
  const auto rows = rows_of(*text);
  for (const food::Food& food : food::foods()) {
    const std::string_view source = food.composition_source;
    if (source.substr(0, release.size()) != release || source.find("from memory") == std::string_view::npos)
      continue;
    CAPTURE(food.id, source);
    CHECK(rows.count(std::string(source.substr(release.size(), 5))) == 0);
  }
}
