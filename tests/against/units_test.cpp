// Every row of the reference list of units, from UCUM, statutes and tables in books. The rows' own sources stand in
// the file; what is asked of our table stands here.

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <set>
#include <string>

#include "core/measure/read.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

namespace {

using namespace tamis::measure;
using tamis::base::Ratio;

struct Question {
  const char* id;
  const char* amount;  ///< the row's input in our words
  System system;
  const char* unit;    ///< what it is asked in; "in3" is worked out from the inch
};

const Question questions[] = {
    {"unit-001", "1 lb", System::us, "g"},          {"unit-002", "1 grain", System::us, "mg"},
    {"unit-003", "1 lb", System::imperial, "kg"},   {"unit-004", "1 gal", System::us, "in3"},
    {"unit-005", "1 gal", System::us, "l"},         {"unit-006", "1 qt", System::us, "ml"},
    {"unit-007", "1 pint", System::us, "ml"},       {"unit-008", "1 fl oz", System::us, "ml"},
    {"unit-009", "1 tbsp", System::us, "ml"},       {"unit-010", "1 dry pint", System::us, "ml"},
    {"unit-011", "1 gill", System::us, "ml"},       {"unit-012", "1 gal", System::imperial, "l"},
    {"unit-013", "1 pint", System::imperial, "ml"}, {"unit-014", "1 fl oz", System::imperial, "ml"},
    {"unit-015", "1 gal", System::imperial, "dm3"}, {"unit-016", "1 label cup", System::us, "ml"},
    {"unit-017", "1 label tsp", System::us, "ml"},  {"unit-018", "1 label fl oz", System::us, "ml"},
    {"unit-019", "1 label oz", System::us, "g"},    {"unit-020", "1 Australian tbsp", System::none, "ml"},
    {"unit-021", "1 Japanese cup", System::none, "ml"},
    {"unit-025", "32 °F", System::none, "degc"},    {"unit-026", "212 °F", System::none, "degc"},
    {"unit-027", "165 °F", System::none, "degc"},   {"unit-028", "145 °F", System::none, "degc"},
    {"unit-029", "41 °F", System::none, "degc"},    {"unit-030", "350 °F", System::none, "degc"},
    {"unit-031", "0 °F", System::none, "degc"},     {"unit-032", "gas mark 1/4", System::none, "degc"},
    {"unit-033", "gas mark 1/2", System::none, "degc"}, {"unit-034", "gas mark 2", System::none, "degc"},
    {"unit-035", "gas mark 3", System::none, "degc"}, {"unit-036", "gas mark 5", System::none, "degc"},
    {"unit-037", "gas mark 6", System::none, "degc"}, {"unit-038", "gas mark 8", System::none, "degc"},
    {"unit-039", "gas mark 9", System::none, "degc"},
};

/// Rows that are no question of units.
const std::map<std::string, const char*> not_asked = {
    {"unit-022", "energy is a figure of the food table, not of a recipe's amounts"},
    {"unit-023", "energy is a figure of the food table, not of a recipe's amounts"},
    {"unit-024", "energy is a figure of the food table, not of a recipe's amounts"},
    {"unit-040", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-041", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-042", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-043", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-044", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-045", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-046", "strength of a sugar solution: physics of solutions, not a unit"},
    {"unit-047", "strength of a sugar solution: physics of solutions, not a unit"},
};

Ratio answer(const Question& question) {
  const auto amount = read_amount(question.amount, ~0U, {"en", question.system, 0});
  REQUIRE(amount);
  const Ratio base = amount->low_base();
  if (std::string(question.unit) == "in3") {
    const Ratio inch_in_cm = unit_by_id("in")->to_base / 10;
    return base / (inch_in_cm * inch_in_cm * inch_in_cm);
  }
  const Unit& unit = *unit_by_id(question.unit);
  return (base - unit.offset) / unit.to_base;
}

TEST_CASE("units agree with UCUM, the statutes and the usual tables", "[against]") {
  const auto text = tamis::tests::shared_file("reference/units.csv");
  if (!text) return;
  std::map<std::string, tamis::tests::CsvRow> rows;
  for (auto& row : tamis::tests::read_csv(*text)) rows[row["id"]] = row;

  std::set<std::string> answered;
  for (const Question& question : questions) {
    CAPTURE(question.id, question.amount);
    REQUIRE(rows.count(question.id) == 1);
    answered.insert(question.id);
    const auto& row = rows[question.id];
    const Ratio ours = answer(question);
    const std::string tolerance = row.at("tolerance");
    CAPTURE(ours.text(), row.at("value"), tolerance);
    if (tolerance == "0") {
      CHECK(ours == *Ratio::parse(row.at("value")));
    } else {
      CHECK(std::abs(ours.approximate() - std::stod(row.at("value"))) <= std::stod(tolerance));
    }
  }
  for (const auto& [id, row] : rows) {
    CAPTURE(id);
    CHECK((answered.count(id) == 1) != (not_asked.count(id) == 1));
  }
  CHECK(rows.size() == answered.size() + not_asked.size());
}

}  // namespace
