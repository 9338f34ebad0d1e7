#include <catch2/catch.hpp>

#include <cmath>

#include "core/food/food.h"
#include "core/food/thermal.h"

using namespace tamis;

// Creams and the like decide how much water a filling holds, and with it how it sets, cools and freezes.
TEST_CASE("heat can be worked out in what a pastry kitchen fills and whips", "[table]") {
  for (const char* id : {"cheese-mascarpone", "cream-double", "cream-creme-fraiche-30", "cream-clotted", "cream-35", "butter-dry-84",
                         "powder-tant-pour-tant", "praline-hazelnut", "praline-almond-hazelnut", "lamb-leg", "mackerel"}) {
    CAPTURE(id);
    const food::Food* found = food::food_by_id(id);
    REQUIRE(found != nullptr);
    const auto read = food::makeup_of(found->per_100_g);
    REQUIRE(read.makeup);
    CHECK(read.makeup->water >= 0.02);
    CHECK(read.makeup->water + read.makeup->fat + read.makeup->protein < 1);
  }
  CHECK(food::food_by_id("cheese-mascarpone")->per_100_g.water == 50);
}
