// The conversion, scaling and capacity figures printed on the general cards of the Armed Forces Recipe Service 2003,
// and the NIST cooking table, as far as they are questions of measures. Every figure must agree within what was
// printed; those that do not are listed with the reason, and the list must be exact.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

#include <nlohmann/json.hpp>

#include "core/measure/kitchen_tools.h"
#include "core/measure/read.h"
#include "core/measure/write.h"
#include "tests/shared_files.h"

namespace {

using namespace tamis::measure;
using nlohmann::json;
using tamis::base::Ratio;

constexpr const char* cards_file = "reference/afrs_conversion_cards.json";
const Reading us{"en", System::us, 0};
const KitchenTools tools;

Amount read(const std::string& text, Kinds kinds = ~0U) {
  CAPTURE(text);
  const auto amount = read_amount(text, kinds, us);
  REQUIRE(amount);
  return *amount;
}

/// Half of the last printed place of the figure a text starts with; 0 for fractions and whole ones of one digit,
/// which are taken as meant exactly.
double half_last_place(const std::string& text) {
  const std::string figure = text.substr(0, text.find(' '));
  const std::size_t point = figure.find('.');
  if (point == std::string::npos) return 0.5;
  return 0.5 * std::pow(10.0, -static_cast<double>(figure.size() - point - 1));
}

/// How far the value may lie from what is printed: half a last place, and what a rounded input carries with it.
double printed_precision(const std::string& given, const std::string& printed) {
  const bool rounded_input = given.find('.') != std::string::npos;
  const double input = rounded_input ? half_last_place(given) / std::stod(given) : 0;
  return half_last_place(printed) + input * std::stod(printed.substr(0, printed.find(' ')));
}

/// The disagreeing rows of a table, by what they were given.
using Exceptions = std::map<std::string, const char*>;

void check_exceptions(const std::set<std::string>& disagreeing, const Exceptions& expected) {
  for (const std::string& row : disagreeing) {
    CAPTURE(row);
    CHECK(expected.count(row) == 1);
  }
  CHECK(disagreeing.size() == expected.size());
}

double in_unit(const std::string& amount, const Unit& unit) {
  return ((read(amount).low_base() - unit.offset) / unit.to_base).approximate();
}

TEST_CASE("US measures agree with the card's metric figures as printed", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json cards = json::parse(*text);
  std::set<std::string> disagreeing;
  for (const auto& row : cards.at("a27_us_to_metric")) {
    const std::string given = row[0];
    const std::string printed = row[1];
    const Amount metric = read(printed);
    const double ours = in_unit(given, *metric.low.front().unit);
    CAPTURE(given, printed, ours);
    if (std::abs(ours - metric.low.front().value.approximate()) > printed_precision(given, printed)) {
      disagreeing.insert(given);
    }
  }
  // The sheet itself prints 30.48 cm beside the yard (a27_note); the row carried here is the one for metres.
  check_exceptions(disagreeing, {});
}

TEST_CASE("Fahrenheit agrees with the card's Celsius", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json cards = json::parse(*text);
  for (const auto& row : cards.at("a27_temperature_F_to_C")) {
    const int fahrenheit = row[0];
    const Ratio celsius = (Ratio(fahrenheit) - 32) * Ratio(5, 9);
    CAPTURE(fahrenheit);
    CHECK(round_food_temperature(celsius, Scale::celsius, tools).amount.low.front().value == Ratio(row[1].get<int>()));
  }
}

TEST_CASE("the NIST table's volumes are the label measures, and the customary ones within 2 %", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json volumes = json::parse(*text).at("nist_table").at("volume_mL");
  const std::map<std::string, std::pair<int, std::string>> of_label = {
      {"tsp", {1, "label tsp"}},   {"tbsp", {1, "label tbsp"}},   {"fl oz", {1, "label fl oz"}}, {"cup", {1, "label cup"}},
      {"pint", {2, "label cups"}}, {"quart", {4, "label cups"}}, {"gallon", {16, "label cups"}}};
  for (const auto& row : volumes) {
    const std::string given = row[0];
    const std::size_t gap = given.find(' ');
    const auto& [cups, name] = of_label.at(given.substr(gap + 1));
    const Ratio printed = *Ratio::parse(row[1].get<std::string>());
    CAPTURE(given);
    CHECK(read(given.substr(0, gap) + " " + name).low_base() * cups == printed);
    CHECK(read(given).low_base().approximate() == Approx(printed.approximate()).epsilon(0.02));
  }
}

TEST_CASE("the NIST table's weights agree as printed", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  std::set<std::string> disagreeing;
  const json weights = json::parse(*text).at("nist_table").at("weight_g");
  for (const auto& row : weights) {
    const std::string given = row[0];
    const std::string printed = row[1];
    const double ours = in_unit(given, *unit_by_id("g"));
    if (std::abs(ours - std::stod(printed)) > printed_precision(given, printed)) disagreeing.insert(given);
  }
  check_exceptions(disagreeing, {{"1/4 lb", "113.4 g; the table takes a quarter of its own 454 g and rounds up"}});
}

TEST_CASE("oven figures agree with the NIST table", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json ovens = json::parse(*text).at("nist_table").at("oven_F_to_C");
  for (const auto& row : ovens) {
    const Amount fahrenheit = read(row[0].get<std::string>() + " °F");
    const Amount celsius = read(row[1].get<std::string>() + " °C");
    CAPTURE(row.dump());
    CHECK(round_oven(fahrenheit.low_base(), Scale::celsius, tools).amount.low_base() == celsius.low_base());
    CHECK(round_oven(fahrenheit.high_base(), Scale::celsius, tools).amount.low_base() == celsius.high_base());
  }
}

TEST_CASE("ounces round off as the card's table says", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json table = json::parse(*text).at("a1_round_off_ounces");
  const Ratio ounce = unit_by_id("oz")->to_base;
  for (const auto& row : table) {
    const std::string range = row[0];
    const std::string rounded = row[1];
    const Ratio expected = rounded == "0" ? Ratio(0) : read(rounded).low.front().value;
    for (const std::string& edge : {range.substr(0, range.find('-')), range.substr(range.find('-') + 1)}) {
      const Ratio part = *Ratio::parse("0" + edge);
      const Rounded shown = round_mass((part + 5) * ounce, System::us, tools, Tolerance{});
      CAPTURE(edge);
      CHECK(shown.amount.low_base() == (expected + 5) * ounce);
    }
  }
}

TEST_CASE("the card's scaling examples come out as printed", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json examples = json::parse(*text).at("a1_scaling_examples");
  const Rounded weight = round_mass(read(examples[0].at("exact")).low_base(), System::us, tools, Tolerance{});
  CHECK(weight.amount == read(examples[0].at("rounded")));
  // "19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp" for 19.98 gal, to the nearest quarter teaspoon.
  const Ratio printed = read(examples[1].at("rounded")).low_base();
  const Ratio exact = read(examples[1].at("exact")).low_base();
  CHECK(tamis::base::abs(printed - exact) <= unit_by_id("tsp-us")->to_base / 8);
}

TEST_CASE("ounces as decimals of a pound agree with the card", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json table = json::parse(*text).at("a1_ounce_as_decimal_pound");
  for (const auto& row : table) {
    const Ratio pounds = convert(row[0].get<int>(), *unit_by_id("oz"), *unit_by_id("lb"));
    std::string printed = row[1];
    if (printed[0] == '.') printed.insert(0, "0");
    CAPTURE(printed);
    CHECK(round_to(pounds, Ratio(1, 100)) == *Ratio::parse(printed));
  }
}

TEST_CASE("the card's rows of weights are in proportion, but for those rounded up", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json table = json::parse(*text).at("a15_weight_rows");
  const json portions = table.at("columns_portions");
  const json rows = table.at("rows");
  const auto hundred = static_cast<std::size_t>(
      std::find(portions.begin(), portions.end(), json(100)) - portions.begin());
  std::set<std::string> disagreeing;
  for (const auto& row : rows) {
    const Ratio whole = read(row[hundred]).low_base();
    for (std::size_t i = 0; i < row.size(); ++i) {
      const Ratio exact = whole * Ratio(portions[i].get<int>(), 100);
      if (read(row[i]).low_base() == exact) continue;
      disagreeing.insert(row[hundred].get<std::string>() + " for " + std::to_string(portions[i].get<int>()));
    }
  }
  constexpr const char* even = "rounded up to an even ounce";
  check_exceptions(disagreeing, {{"2 lb 12 oz for 75", even},
                                 {"2 lb 12 oz for 125", even},
                                 {"2 lb 12 oz for 175", even},
                                 {"2 lb 12 oz for 275", even},
                                 {"12 lb for 10", "1 lb 3.2 oz, rounded up to the ounce"}});
}

TEST_CASE("pan sizes and capacities of the card can be read", "[against]") {
  const auto text = tamis::tests::shared_file(cards_file);
  if (!text) return;
  const json pans = json::parse(*text).at("a25_usable_pan_capacity_quarts");
  for (const auto& row : pans) {
    std::string name = row[0];
    CAPTURE(name);
    name.erase(0, name.find_first_of("0123456789"));
    const std::string sides = name.substr(0, name.find(','));
    const auto base = read_lengths(sides.ends_with("in") ? sides : sides + " in", us);
    REQUIRE(base);
    CHECK(base->size() == 2);
    std::string deep = name.substr(name.find(',') + 2);
    deep = deep.substr(0, deep.find(" in") + 3);
    const Amount depth = read(deep);
    const auto quarts = read_amount(row[1].get<std::string>() + " quarts", ~0U, us);
    REQUIRE(quarts);
    // Nothing holds more than its sides and depth allow.
    const Ratio cubic_mm = (*base)[0].low_base() * (*base)[1].low_base() * depth.low_base();
    CHECK(quarts->low_base() * 1000 < cubic_mm);
  }
}

}  // namespace
