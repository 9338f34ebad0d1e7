// The limits of food safety that a kitchen can choose, against the reference rows that print one. Every row's own source
// stands in the reference; ours stand in core/rules/safety_limits.inc. The rows on lethality are in lethality_test.cpp.

#include "core/rules/safety_limits.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include "tests/csv.h"
#include "tests/shared_files.h"

using namespace tamis;
using rules::SafetyLimit;

namespace {

enum class Figure { celsius, seconds };

/// A row of the reference, and the line of ours that answers it: of a limit with several pairs the one at `at`.
struct Row {
  const char* id;
  const char* name;
  const char* set;
  Figure figure;
  double at = 0;  ///< °C; 0: the limit's only line
};

const std::array rows{
    Row{"safe-001", "cooling_first", "us", Figure::seconds},
    Row{"safe-002", "cooling_from_room", "us", Figure::seconds},
    Row{"safe-003", "hot_holding", "us", Figure::celsius},
    Row{"safe-004", "cold_holding", "us", Figure::celsius},
    Row{"safe-006", "thawing_water", "us", Figure::celsius},
    Row{"safe-007", "time_alone", "us", Figure::seconds},
    Row{"safe-008", "time_alone_cool", "us", Figure::seconds},
    Row{"safe-009", "date_mark", "us", Figure::seconds},
    Row{"safe-011", "reheating_time", "us", Figure::seconds},
    Row{"safe-012", "cook_poultry", "us", Figure::celsius, 74},
    Row{"safe-013", "cook_minced", "us", Figure::seconds, 66},
    Row{"safe-014", "cook_minced", "us", Figure::seconds, 63},
    Row{"safe-015", "cook_minced", "us", Figure::celsius, 70},
    Row{"safe-087", "hot_holding", "uk", Figure::celsius},
    Row{"safe-088", "time_alone", "uk", Figure::seconds},
    Row{"safe-089", "cook_any", "uk", Figure::seconds, 60},
    Row{"safe-090", "cook_any", "uk", Figure::seconds, 65},
    Row{"safe-091", "cook_any", "uk", Figure::seconds, 75},
    Row{"safe-092", "cook_any", "uk", Figure::seconds, 80},
    Row{"safe-093", "cold_holding", "ontario", Figure::celsius},
    Row{"safe-095", "cook_poultry", "ontario", Figure::celsius, 74},
    Row{"safe-096", "cook_fish", "ontario", Figure::celsius, 70},
};

/// Rows on limits that no rule of ours holds a recipe to, and why.
const std::map<std::string, std::string> left_out{
    {"safe-005", "of eggs in the shell as they are delivered: no recipe says it"},
    {"safe-010", "whether a date is to be written at all; ours is how long it may run"},
    {"safe-016", "of microwave ovens"},
    {"safe-017", "of microwave ovens"},
    {"safe-018", "stands in words beside the limit of -20 °C, which is what recipes state"},
    {"safe-040", "of poultry rolls made under inspection"},
    {"safe-041", "of poultry rolls made under inspection"},
    {"safe-042", "of large pieces heated slowly under inspection"},
    {"safe-056", "a step between rows on milk, of plants"},
    {"safe-057", "of mixes pasteurised in a plant"},
    {"safe-058", "of mixes pasteurised in a plant"},
    {"safe-082", "of meat as it is delivered"},
    {"safe-083", "of meat as it is delivered"},
    {"safe-084", "of minced meat as it is delivered"},
    {"safe-085", "of deep-frozen goods in trade; freezers are in core/flow/stores.inc"},
    {"safe-086", "of water for knives"},
    {"safe-094", "whole birds: stands in words beside the limit for pieces, for no recipe's thickness tells them apart"},
};

const SafetyLimit* line_of(const Row& row) {
  const auto all = rules::safety_limits();
  const auto found = std::find_if(all.begin(), all.end(), [&](const SafetyLimit& line) {
    return line.name == row.name && line.set == row.set && (row.at == 0 || std::abs(line.celsius - row.at) < 0.01);
  });
  return found == all.end() ? nullptr : &*found;
}

/// In °C and seconds.
double in_our_units(double value, const std::string& unit) {
  static const std::map<std::string, double> factors{{"degC", 1}, {"s", 1}, {"min", 60}, {"h", 3600}, {"d", 86400}};
  REQUIRE(factors.count(unit) == 1);
  return value * factors.at(unit);
}

bool is_on_lethality(const std::string& id) {
  return ("safe-019" <= id && id <= "safe-039") || ("safe-043" <= id && id <= "safe-055") ||
         ("safe-059" <= id && id <= "safe-081");
}

}  // namespace

TEST_CASE("every limit of the reference is one of ours or left out with a reason", "[against]") {
  const auto text = tests::shared_file("reference/food_safety.csv");
  if (!text) return;
  std::size_t seen = 0;
  for (auto& line : tests::read_csv(*text)) {
    const std::string& id = line["id"];
    CAPTURE(id, line["quantity"], line["inputs"]);
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& one) { return id == one.id; });
    if (row == rows.end()) {
      CHECK((is_on_lethality(id) || left_out.count(id) == 1));
      continue;
    }
    ++seen;
    const SafetyLimit* ours = line_of(*row);
    REQUIRE(ours != nullptr);
    CHECK((row->figure == Figure::celsius ? ours->celsius : ours->seconds) ==
          in_our_units(std::stod(line["value"]), line["unit"]));
  }
  CHECK(seen == rows.size());
}

TEST_CASE("a kitchen without limits of its own, or whose say nothing of it, is held to the model code", "[against]") {
  fiche::Kitchen kitchen;
  CHECK(rules::safety_limit(kitchen, "hot_holding").celsius == 57);
  kitchen.limits = "uk";
  CHECK(rules::safety_limit(kitchen, "hot_holding").celsius == 63);
  CHECK(rules::safety_limit(kitchen, "cooling_first").set == "us");
}

TEST_CASE("between two pairs of temperature and time the time falls by one factor a degree", "[against]") {
  fiche::Kitchen kitchen;
  kitchen.limits = "uk";
  const auto pairs = rules::safety_pairs(kitchen, "cook_any");
  CHECK_FALSE(rules::seconds_needed(pairs, 59.9));
  CHECK(rules::seconds_needed(pairs, 60) == 2700.0);
  CHECK(*rules::seconds_needed(pairs, 62.5) == Approx(std::sqrt(2700.0 * 600)));
  // The agency's own list has 2 min at 70 °C (from memory): the same line gives 134 s.
  CHECK(*rules::seconds_needed(pairs, 70) == Approx(134).margin(1));
  CHECK(rules::seconds_needed(pairs, 90) == 6.0);
}

TEST_CASE("every limit has a source, a figure and its lines together", "[against]") {
  std::set<std::pair<std::string_view, std::string_view>> closed;
  const SafetyLimit* before = nullptr;
  for (const SafetyLimit& line : rules::safety_limits()) {
    CAPTURE(line.name, line.set);
    CHECK_FALSE(line.source.empty());
    CHECK_FALSE((std::isnan(line.celsius) && std::isnan(line.seconds)));
    if (before != nullptr && before->name == line.name && before->set == line.set) {
      CHECK(before->celsius < line.celsius);
      CHECK(before->seconds >= line.seconds);
    } else {
      CHECK(closed.emplace(line.name, line.set).second);
    }
    before = &line;
  }
}
