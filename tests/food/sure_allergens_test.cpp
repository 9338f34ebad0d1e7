#include <catch2/catch.hpp>

#include "core/food/allergen_bits.h"
#include "core/food/sure_allergens.h"

using namespace tamis::food;

TEST_CASE("what a food holds by what it is, is sure; what makers usually add is not") {
  const auto sure = [](const char* id) {
    const Food* food = food_by_id(id);
    REQUIRE(food != nullptr);
    return sure_allergens(*food);
  };
  CHECK(sure("butter-unsalted") == allergen::milk);
  CHECK(sure("egg-yolk") == allergen::egg);
  CHECK(sure("flour-wheat-white") == (allergen::gluten | allergen::wheat));
  CHECK(sure("flour-rye") == allergen::gluten);
  CHECK(sure("walnut") == allergen::nuts);
  CHECK(sure("celeriac") == allergen::celery);
  CHECK(sure("chocolate-milk") == allergen::milk);
  CHECK(sure("chocolate-dark-70") == 0);
  CHECK(sure("wine-red") == 0);
  CHECK(sure("sugar-white") == 0);
}

TEST_CASE("nothing is sure that the table does not name at all") {
  for (const Food& food : foods()) {
    CAPTURE(food.id);
    CHECK((sure_allergens(food) & ~food.allergens) == 0);
  }
}
