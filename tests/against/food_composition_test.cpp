#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <map>
#include <string>

#include "core/food/food.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

// Every figure of a food that names an SR28 row is the figure USDA printed for it: composition, refuse and household
// measures, against reference/usda_sr_excerpt.csv (USDA National Nutrient Database for Standard Reference, 28).

using namespace tamis;

namespace {

constexpr std::string_view release = "USDA SR28 ";

/// "01145" of "USDA SR28 01145, as ..."; empty when the source is another or the figures come from memory.
std::string row_number(std::string_view source) {
  if (source.substr(0, release.size()) != release || source.find("from memory") != std::string_view::npos) return {};
  return std::string(source.substr(release.size(), 5));
}

struct Column {
  const char* name;
  double food::Composition::* figure;
};
constexpr Column columns[] = {
    {"water_g", &food::Composition::water},
    {"energy_kcal", &food::Composition::energy_kcal},
    {"protein_g", &food::Composition::protein},
    {"fat_g", &food::Composition::fat},
    {"sat_fat_g", &food::Composition::saturated},
    {"carbohydrate_g", &food::Composition::carbohydrate},
    {"sugars_g", &food::Composition::sugars},
    {"fibre_g", &food::Composition::fibre},
    {"ash_g", &food::Composition::ash},
    {"sodium_mg", &food::Composition::sodium_mg},
    {"alcohol_g", &food::Composition::alcohol},
};

bool same(const std::string& printed, double ours) {
  return printed.empty() ? std::isnan(ours) : std::strtod(printed.c_str(), nullptr) == ours;
}

}  // namespace

TEST_CASE("compositions that name a USDA row are the row's figures", "[against][food]") {
  const auto text = tests::shared_file("reference/usda_sr_excerpt.csv");
  if (!text) return;
  std::map<std::string, tests::CsvRow> rows;
  for (auto& row : tests::read_csv(*text)) rows[row.at("ndb_no")] = row;
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
