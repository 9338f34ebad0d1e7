// Boiling points by pressure and by height against the reference rows; each row's own source stands in the file.

#include <catch2/catch.hpp>

#include <string>

#include "core/physics/boiling_point.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

using namespace tamis;

TEST_CASE("water boils where IAPWS-IF97 and the standard atmosphere say", "[against]") {
  const auto text = tests::shared_file("reference/thermal_properties.csv");
  if (!text) return;
  int by_pressure = 0;
  int by_height = 0;
  for (auto& row : tests::read_csv(*text)) {
    const std::string quantity = row["quantity"];
    if (!quantity.starts_with("boiling point of water at ")) continue;
    const double given = std::stod(row["inputs"]);
    const double expected = std::stod(row["value"]);
    const double tolerance = std::stod(row["tolerance"]);
    CAPTURE(row["id"], row["inputs"]);
    if (quantity == "boiling point of water at pressure") {
      ++by_pressure;
      CHECK(physics::boiling_point_at(given * 1000) == Approx(expected).margin(tolerance));
    } else if (quantity == "boiling point of water at altitude") {
      ++by_height;
      CHECK(physics::boiling_point(given) == Approx(expected).margin(tolerance));
    } else {
      // A rule of thumb, in feet and Fahrenheit.
      CHECK(row["inputs"].ends_with(" ft"));
      CHECK(physics::boiling_point(given * 0.3048) * 1.8 + 32 == Approx(expected).margin(tolerance));
    }
  }
  CHECK(by_pressure == 5);
  CHECK(by_height == 7);
}
