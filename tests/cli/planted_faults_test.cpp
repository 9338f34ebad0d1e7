#include <catch2/catch.hpp>

#include <memory>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "core/cli/checking.h"
#include "core/cli/surroundings.h"
#include "tests/shared_files.h"

namespace tamis::cli {
namespace {

/// One fault of tests/planted/faults.txt.
struct PlantedFault {
  std::string title, fiche, finds;
  std::vector<std::pair<std::string, std::string>> edits;
};

std::string with_line_ends(std::string text) {
  for (std::size_t at = 0; (at = text.find("\\n", at)) != std::string::npos; ++at) text.replace(at, 2, "\n");
  return text;
}

std::vector<PlantedFault> planted_faults() {
  std::vector<PlantedFault> out;
  std::istringstream lines(tests::project_file("tests/planted/faults.txt"));
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.front() == '#') continue;
    const std::size_t colon = line.find(": ");
    const std::string key = line.substr(0, colon);
    const std::string value = colon == std::string::npos ? "" : line.substr(colon + 2);
    if (key == "fault") out.push_back({value, {}, {}, {}});
    REQUIRE_FALSE(out.empty());
    if (key == "fiche") out.back().fiche = value;
    if (key == "was") out.back().edits.emplace_back(with_line_ends(value), "");
    if (key == "is" || key == "is:") out.back().edits.back().second = with_line_ends(value);
    if (key == "finds") out.back().finds = value;
  }
  return out;
}

std::string with_fault(std::string text, const PlantedFault& fault) {
  for (const auto& [was, is] : fault.edits) {
    CAPTURE(was);
    const std::size_t at = text.find(was);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(was, at + 1) == std::string::npos);
    text.replace(at, was.size(), is);
  }
  return text;
}

std::string told(const base::Source& source, const std::vector<base::Finding>& findings) {
  std::string out;
  for (const base::Finding& finding : findings) {
    const base::Place place = source.place(finding.where.begin);
    if (!out.empty()) out += '\n';
    out += std::to_string(place.line) + ':' + std::to_string(place.column) + ' ' +
           std::string(severity_name(finding.severity)) + ' ' + finding.rule + ": " + finding.message;
  }
  return out;
}

}  // namespace

TEST_CASE("every fault planted in the demo kitchen is caught, and nothing else is said") {
  const std::vector<PlantedFault> faults = planted_faults();
  REQUIRE(faults.size() >= 20);
  for (const PlantedFault& fault : faults) {
    CAPTURE(fault.title);
    const std::string path = std::string(TAMIS_SOURCE_DIR) + "/tests/kitchen/" + fault.fiche;
    const std::string good = tests::project_file("tests/kitchen/" + fault.fiche);
    const auto source = std::make_shared<base::Source>(path, with_fault(good, fault));
    Surroundings surroundings{""};
    CHECK(told(*source, check_source(source, surroundings).findings) == fault.finds);
  }
}

TEST_CASE("a step outside every component is said, and its result is nobody's") {
  const std::string text = R"(<fiche xmlns="urn:tamis:fiche:1" id="a"><title>A</title>
  <step makes="b">Mix.</step>
</fiche>)";
  Surroundings surroundings{""};
  const auto source = std::make_shared<base::Source>("a.fiche.xml", text);
  CHECK(told(*source, check_source(source, surroundings).findings) ==
        "2:3 error misplaced-element: <step> may not stand in <fiche>");
}

}  // namespace tamis::cli
