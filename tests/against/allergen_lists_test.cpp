#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <string>

#include "core/food/allergen_bits.h"
#include "core/food/food.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

// The allergen lists against reference/labelling.csv: Regulation (EU) 1169/2011 Annex II; FALCPA 2004, FASTER Act
// 2021.

using namespace tamis;
namespace allergen = food::allergen;

namespace {

const food::AllergenName& name_of(food::Allergens bit) {
  const auto all = food::allergen_names();
  return *std::find_if(all.begin(), all.end(), [&](const auto& name) { return name.bit == bit; });
}

std::string required(food::Allergens bit) {
  return std::string(name_of(bit).us ? "yes" : "no") + "/" + (name_of(bit).eu ? "yes" : "no");
}

bool names_us(food::Allergens bit, const std::string& words) {
  return name_of(bit).us && name_of(bit).source.find(words) != std::string_view::npos;
}

food::Allergens allergens_of(std::string_view id) {
  const food::Food* food = food::food_by_id(id);
  REQUIRE(food != nullptr);
  return food->allergens;
}

}  // namespace

TEST_CASE("the allergen lists are the ones the law prints", "[against][food]") {
  const auto text = tests::shared_file("reference/labelling.csv");
  if (!text) return;
  std::map<std::string, std::string> printed;
  for (const auto& row : tests::read_csv(*text)) printed[row.at("id")] = row.at("value");

  const auto all = food::allergen_names();
  CHECK(std::to_string(std::count_if(all.begin(), all.end(), [](const auto& name) { return name.eu; })) ==
        printed.at("label-001"));
  const std::map<std::string, food::Allergens> groups = {
      {"label-002", allergen::crustaceans}, {"label-003", allergen::egg},       {"label-004", allergen::fish},
      {"label-005", allergen::soy},         {"label-006", allergen::milk},      {"label-007", allergen::celery},
      {"label-008", allergen::mustard},     {"label-009", allergen::sulphites}, {"label-010", allergen::lupin},
      {"label-011", allergen::molluscs}};
  for (const auto& [id, bit] : groups) {
    CAPTURE(id);
    CHECK(name_of(bit).english == printed.at(id));
    CHECK(name_of(bit).eu);
  }
  CHECK(names_us(allergen::crustaceans, printed.at("label-016")));
  CHECK(names_us(allergen::nuts, printed.at("label-017")));
  CHECK(names_us(allergen::wheat, printed.at("label-018")));
  CHECK(required(allergen::celery) == printed.at("label-019"));
  CHECK(required(allergen::mustard) == printed.at("label-020"));
  CHECK(required(allergen::molluscs) == printed.at("label-021"));
}

TEST_CASE("the foods the lists name carry the bits, the exempt ones do not", "[against][food]") {
  // label-012: the eight nuts of point 8; coconut and chestnut are not in the list. label-013: refined soybean oil
  // is exempt. label-022: rye is a gluten cereal in the EU and no major allergen in the US.
  for (const char* nut :
       {"almond", "hazelnut", "walnut", "cashew", "pecan", "nut-brazil", "pistachio", "macadamia"}) {
    CAPTURE(nut);
    CHECK(allergens_of(nut) == allergen::nuts);
  }
  CHECK((allergens_of("coconut-fresh") & allergen::nuts) == 0);
  CHECK((allergens_of("chestnut") & allergen::nuts) == 0);
  CHECK((allergens_of("oil-soybean") & allergen::soy) == 0);
  CHECK(allergens_of("flour-rye") == allergen::gluten);
  CHECK(allergens_of("flour-wheat-white") == (allergen::gluten | allergen::wheat));
}
