#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>
#include <optional>
#include <set>
#include <string>

#include "core/food/food.h"
#include "core/measure/unit.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

// Household measures, piece masses and egg classes against reference/food_density.csv (USDA SR28 WEIGHT file; USDA
// weight classes for shell eggs; Regulation (EC) 589/2008): every row is asked of our own table.

using namespace tamis;

namespace {

/// What a reference row is called in our table: the food, the measure and its form.
struct Asked {
  const char* food;
  const char* what;
  const char* form;
};

const std::map<std::string, Asked> asked = {
    {"dens-001", {"butter-salted", "cup", ""}},
    {"dens-002", {"butter-salted", "tbsp", ""}},
    {"dens-003", {"milk-whole", "cup", ""}},
    {"dens-004", {"milk-whole", "quart", ""}},
    {"dens-005", {"milk-whole", "fl oz", ""}},
    {"dens-006", {"cream-36", "cup", ""}},
    {"dens-007", {"cream-36", "cup", "whipped"}},
    {"dens-008", {"cream-30", "cup", ""}},
    {"dens-009", {"yogurt-whole", "cup", ""}},
    {"dens-010", {"cheese-cream", "cup", ""}},
    {"dens-011", {"egg-whole", "large", ""}},
    {"dens-012", {"egg-whole", "extra large", ""}},
    {"dens-013", {"egg-whole", "cup", ""}},
    {"dens-014", {"egg-white", "large", ""}},
    {"dens-015", {"egg-yolk", "large", ""}},
    {"dens-016", {"cheese-cheddar", "cup", "diced"}},
    {"dens-017", {"cheese-parmesan-grated", "cup", ""}},
    {"dens-018", {"flour-wheat-white", "cup", ""}},
    {"dens-019", {"flour-wheat-wholemeal", "cup", ""}},
    {"dens-020", {"flour-rice", "cup", ""}},
    {"dens-021", {"starch-maize", "cup", ""}},
    {"dens-022", {"cornmeal", "cup", ""}},
    {"dens-023", {"sugar-white", "cup", ""}},
    {"dens-024", {"sugar-white", "tsp", ""}},
    {"dens-025", {"sugar-brown", "cup", "packed"}},
    {"dens-026", {"sugar-brown", "cup", "unpacked"}},
    {"dens-027", {"sugar-icing", "cup", "unsifted"}},
    {"dens-028", {"sugar-icing", "cup", "sifted"}},
    {"dens-029", {"honey", "cup", ""}},
    {"dens-030", {"honey", "tbsp", ""}},
    {"dens-031", {"molasses", "cup", ""}},
    {"dens-032", {"syrup-maple", "cup", ""}},
    {"dens-033", {"syrup-corn-light", "cup", ""}},
    {"dens-034", {"cocoa-powder", "cup", ""}},
    {"dens-035", {"cocoa-powder", "tbsp", ""}},
    {"dens-036", {"oil-olive", "cup", ""}},
    {"dens-037", {"oil-olive", "tbsp", ""}},
    {"dens-038", {"mayonnaise", "cup", ""}},
    {"dens-039", {"salt", "tsp", ""}},
    {"dens-040", {"baking-powder", "tsp", ""}},
    {"dens-041", {"baking-soda", "tsp", ""}},
    {"dens-042", {"yeast-active-dry", "packet", ""}},
    {"dens-043", {"yeast-active-dry", "tsp", ""}},
    {"dens-044", {"gelatine-powder", "envelope", "1 tbsp"}},
    {"dens-045", {"vanilla-extract", "tsp", ""}},
    {"dens-046", {"cinnamon", "tsp", ""}},
    {"dens-047", {"rice-white", "cup", ""}},
    {"dens-048", {"almond", "cup", "whole"}},
    {"dens-049", {"walnut", "cup", "chopped"}},
    {"dens-050", {"raisin", "cup", "packed"}},
    {"dens-051", {"raisin", "cup", "not packed"}},
    {"dens-052", {"peanut-butter", "cup", ""}},
    {"dens-053", {"breadcrumbs-dry", "cup", ""}},
    {"dens-054", {"onion", "cup", "chopped"}},
    {"dens-055", {"egg-whole", "jumbo", "in shell, at least"}},
    {"dens-056", {"egg-whole", "large", "in shell, at least"}},
    {"dens-057", {"egg-whole", "medium", "in shell, at least"}},
    {"dens-058", {"egg-whole", "small", "in shell, at least"}},
    {"dens-059", {"egg-whole", "XL", "in shell, at least"}},
    {"dens-060", {"egg-whole", "L", "in shell, at least"}},
    {"dens-061", {"egg-whole", "M", "in shell, less than"}},
    {"dens-062", {"egg-whole", "S", "in shell, less than"}},
    {"dens-063", {"egg-whole", "large", "in shell, at least"}},
    {"dens-064", {"honey", "density", ""}},
};

/// Rows that our table cannot answer, with the reason. None today.
const std::map<std::string, std::string> unanswered = {};

std::optional<double> answer(const Asked& question, const std::string& unit) {
  const food::Food* food = food::food_by_id(question.food);
  if (food == nullptr) return std::nullopt;
  if (std::string(question.what) == "density") {
    const auto density = food::density_of(*food, question.form);
    return density ? std::optional(density->grams_per_ml.approximate()) : std::nullopt;
  }
  for (const food::Measure& measure : food->measures) {
    if (measure.what != question.what || measure.note != question.form) continue;
    return unit == "oz" ? measure.grams * 12 / 28.349523125 : measure.grams;  // classes are in ounces a dozen
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("household measures, pieces and egg classes agree with the reference", "[against][food]") {
  const auto text = tests::shared_file("reference/food_density.csv");
  if (!text) return;
  std::set<std::string> seen;
  for (const auto& row : tests::read_csv(*text)) {
    const std::string& id = row.at("id");
    CAPTURE(id, row.at("inputs"));
    seen.insert(id);
    if (unanswered.count(id) != 0) continue;
    REQUIRE(asked.count(id) == 1);
    const auto value = answer(asked.at(id), row.at("unit"));
    REQUIRE(value);
    const double tolerance = std::strtod(row.at("tolerance").c_str(), nullptr);
    const double printed = std::strtod(row.at("value").c_str(), nullptr);
    CHECK(*value == Approx(printed).epsilon(0).margin(tolerance + 1e-7 * printed));
  }
  for (const auto& [id, question] : asked) {
    CAPTURE(id);
    CHECK(seen.count(id) == 1);
  }
  CHECK(seen.size() == asked.size() + unanswered.size());
}
