#include <catch2/catch.hpp>

#include "core/food/food.h"

using namespace tamis;

TEST_CASE("a cup of sugar gives its exact density", "[density]") {
  const auto density = food::density_of(*food::food_by_id("sugar-white"));
  REQUIRE(density);
  CHECK(density->grams_per_ml == base::Ratio(200) / *base::Ratio::parse("236.5882365"));
  CHECK(density->source == "USDA SR28 19335");
}

TEST_CASE("a form that is asked for has its own density", "[density]") {
  const food::Food& cream = *food::food_by_id("cream-36");
  const base::Ratio cup = *base::Ratio::parse("236.5882365");
  CHECK(food::density_of(cream)->grams_per_ml * cup == base::Ratio(238));
  CHECK(food::density_of(cream, "whipped")->grams_per_ml * cup == base::Ratio(120));
  CHECK(food::density_of(cream, "whipped")->form == "whipped");
  CHECK(food::density_of(cream, "cold")->grams_per_ml * cup == base::Ratio(238));
  const food::Food& brown = *food::food_by_id("sugar-brown");
  CHECK(food::density_of(brown, "packed")->grams_per_ml * cup == base::Ratio(220));
  CHECK(food::density_of(brown, "unpacked")->grams_per_ml * cup == base::Ratio(145));
}

TEST_CASE("pieces go by size, grade and class", "[piece]") {
  const food::Food& egg = *food::food_by_id("egg-whole");
  CHECK(food::piece_of(egg)->grams == base::Ratio(50));
  CHECK(food::piece_of(egg, "large")->grams == base::Ratio(50));
  CHECK(food::piece_of(egg, "M")->grams == *base::Ratio::parse("51.04"));
  CHECK(food::piece_of(egg, "large in shell, at least")->grams == *base::Ratio::parse("56.69904625"));
  CHECK_FALSE(food::piece_of(egg, "clove"));
  const food::Food& leaf = *food::food_by_id("gelatine-leaf");
  CHECK(food::piece_of(leaf)->grams == base::Ratio(2));
  CHECK(food::piece_of(leaf, "bronze")->grams == base::Ratio(33, 10));
  CHECK(food::piece_of(leaf, "leaf platinum")->grams == base::Ratio(17, 10));
}
