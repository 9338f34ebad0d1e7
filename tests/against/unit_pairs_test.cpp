// All pairs of units of a kind against GNU units (Debian package units), in one run of it.

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include <unistd.h>

#include "core/measure/amount.h"
#include "core/measure/kitchen_tools.h"

namespace {

using namespace tamis::measure;
using tamis::base::Ratio;

/// Our unit and GNU's name for it.
const std::map<std::string_view, const char*> gnu_names = {
    {"mg", "milligram"}, {"g", "gram"}, {"dag", "decagram"}, {"kg", "kilogram"}, {"oz", "ounce"}, {"lb", "pound"},
    {"grain", "grain"}, {"pfund", "pfund"},
    {"ml", "milliliter"}, {"cl", "centiliter"}, {"dl", "deciliter"}, {"l", "liter"}, {"cm3", "cm^3"}, {"dm3", "dm^3"},
    {"tsp-us", "usteaspoon"}, {"tbsp-us", "ustablespoon"}, {"floz-us", "usfloz"}, {"gill-us", "usgill"},
    {"cup-us", "uscup"}, {"pint-us", "uspint"}, {"quart-us", "usquart"}, {"gallon-us", "usgallon"},
    {"dry-pint-us", "drypint"}, {"dry-quart-us", "dryquart"}, {"peck-us", "uspeck"}, {"bushel-us", "usbushel"},
    {"tbsp-label-us", "legaltablespoon"}, {"cup-label-us", "legalcup"},
    {"tsp-imperial", "brteaspoon"}, {"dessertspoon-imperial", "brdessertspoon"}, {"tbsp-imperial", "brtablespoon"},
    {"floz-imperial", "brfloz"}, {"gill-imperial", "brgill"}, {"cup-imperial", "brcup"}, {"pint-imperial", "brpint"},
    {"quart-imperial", "brquart"}, {"gallon-imperial", "brgallon"},
    {"cup-metric", "metriccup"}, {"tbsp-au", "australiatablespoon"}, {"cup-jp", "japancup"},
    {"mm", "millimeter"}, {"cm", "centimeter"}, {"m", "meter"}, {"in", "inch"}, {"ft", "foot"}, {"yd", "yard"},
    {"dozen", "dozen"}, {"pair", "pair"},
    {"s", "second"}, {"min", "minute"}, {"h", "hour"}, {"day", "day"}, {"week", "week"},
    {"month", "(julianyear/12)"}, {"year", "julianyear"},
    {"degc-difference", "degC"}, {"degf-difference", "degF"}, {"kelvin-difference", "kelvin"}};

/// Exact units that GNU units has no name for.
const std::map<std::string_view, const char*> not_there = {
    {"oz-label-us", "the label's ounce of 28 g; checked against 21 CFR 101.9 in units_test"},
    {"tsp-label-us", "the label's teaspoon; checked against 21 CFR 101.9 in units_test"},
    {"floz-label-us", "the label's fluid ounce; checked against 21 CFR 101.9 in units_test"},
    {"tsp-metric", "5 ml by name only"},
    {"dessertspoon-metric", "10 ml by name only"},
    {"tbsp-metric", "15 ml by name only"},
    {"thermostat", "a French oven dial"}};

bool is_one_of_something(const Unit& unit) { return unit.kind == Kind::count && unit.to_base == 1; }

struct Asked {
  std::string have, want;
  double ours;
};

std::vector<Asked> all_pairs() {
  std::vector<Asked> asked;
  for (const Unit& from : units()) {
    for (const Unit& to : units()) {
      const auto have = gnu_names.find(from.id);
      const auto want = gnu_names.find(to.id);
      if (from.kind != to.kind || have == gnu_names.end() || want == gnu_names.end()) continue;
      asked.push_back({std::string("1 ") + have->second, want->second, convert(1, from, to).approximate()});
    }
  }
  return asked;
}

void add_temperatures(std::vector<Asked>& asked) {
  const std::map<std::string_view, std::string> scales = {{"degc", "tempC"}, {"degf", "tempF"}, {"kelvin", "tempK"}};
  for (const auto& [from, have] : scales) {
    for (const auto& [to, want] : scales) {
      for (const int degrees : {0, 32, 100, 165, 350, 451}) {
        const double ours = convert(degrees, *unit_by_id(from), *unit_by_id(to)).approximate();
        asked.push_back({have + "(" + std::to_string(degrees) + ")", want, ours});
      }
    }
  }
  for (const Ratio mark : gas_marks()) {
    const double ours = convert(mark, *unit_by_id("gas-mark"), *unit_by_id("degf")).approximate();
    const std::string value = mark.whole() ? mark.text() : "0" + std::string(mark == Ratio(1, 2) ? ".5" : ".25");
    asked.push_back({"gasmark(" + value + ")", "tempF", ours});
  }
}

std::vector<double> answers(const std::vector<Asked>& asked) {
  char name[] = "/tmp/tamis-units-XXXXXX";
  const int file = mkstemp(name);
  REQUIRE(file >= 0);
  close(file);
  std::ofstream out(name);
  for (const Asked& question : asked) out << question.have << "\n" << question.want << "\n";
  out.close();
  const std::string command = "units --quiet --terse --output-format %.17g < " + std::string(name);
  std::FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::vector<double> read;
  char line[256];
  while (std::fgets(line, sizeof line, pipe) != nullptr) read.push_back(std::strtod(line, nullptr));
  pclose(pipe);
  unlink(name);
  return read;
}

TEST_CASE("all pairs of units agree with GNU units", "[against]") {
  if (std::system("command -v units > /dev/null 2>&1") != 0) {
    std::printf("SKIPPED: GNU units is not installed\n");
    return;
  }
  constexpr double relative = 1e-13;
  std::vector<Asked> asked = all_pairs();
  REQUIRE(asked.size() > 1000);
  add_temperatures(asked);
  const std::vector<double> theirs = answers(asked);
  REQUIRE(theirs.size() == asked.size());
  for (std::size_t i = 0; i < asked.size(); ++i) {
    // GNU units holds a scale's zero in floating point: a few parts in 1e13 of a kelvin.
    const double slack = relative * std::max(std::abs(asked[i].ours), asked[i].want.starts_with("temp") ? 1000.0 : 0.0);
    if (std::abs(theirs[i] - asked[i].ours) <= slack) continue;
    CAPTURE(asked[i].have, asked[i].want, asked[i].ours, theirs[i]);
    FAIL_CHECK("GNU units says otherwise");
  }
}

TEST_CASE("every exact unit is held against GNU units or said not to be there", "[against]") {
  for (const Unit& unit : units()) {
    const bool asked = gnu_names.count(unit.id) == 1 || unit.id == "degc" || unit.id == "degf" || unit.id == "kelvin" ||
                       is_gas_mark(unit);
    if (unit.rough || is_one_of_something(unit)) continue;
    CAPTURE(unit.id);
    CHECK(asked != (not_there.count(unit.id) == 1));
  }
}

}  // namespace
