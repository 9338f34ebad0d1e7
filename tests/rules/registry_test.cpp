#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>
#include <sstream>

#include "core/rules/reference.h"
#include "core/rules/rule.h"
#include "tests/shared_files.h"

using namespace tamis;

namespace {

std::string file_name(std::string_view id) {
  std::string name(id);
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

/// The .cpp files of core/rules that define a rule.
std::set<std::string> rule_files() {
  std::set<std::string> out;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TAMIS_SOURCE_DIR) + "/core/rules")) {
    const std::string name = entry.path().filename().string();
    if (entry.path().extension() != ".cpp") continue;
    const std::string text = tests::project_file("core/rules/" + name);
    if (text.find("\nconst Rule ") != std::string::npos) out.insert(entry.path().stem().string());
  }
  return out;
}

std::set<std::string> listed() {
  std::set<std::string> out;
  std::istringstream lines(tests::project_file("core/rules/rules.inc"));
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("TAMIS_RULE(")) continue;
    CAPTURE(line);
    CHECK(out.insert(line.substr(11, line.find(')') - 11)).second);
  }
  return out;
}

}  // namespace

TEST_CASE("every rule has one file and one line in the list") {
  const std::set<std::string> files = rule_files();
  CHECK(files.size() > 30);
  CHECK(listed() == files);
}

TEST_CASE("a rule's file bears the rule's name") {
  for (const rules::Rule* rule : rules::rules()) {
    CAPTURE(rule->id);
    const std::string text = tests::project_file("core/rules/" + file_name(rule->id) + ".cpp");
    CHECK(text.find("const Rule " + file_name(rule->id) + " = {") != std::string::npos);
    CHECK(text.find("/// ") != std::string::npos);
    CHECK(std::count(text.begin(), text.end(), '\n') <= 150);
  }
}

TEST_CASE("every rule says what, why and where from") {
  const std::set<std::string_view> topics{"document", "measure",  "balance",    "order", "temperature",
                                          "safety", "sharing",  "teaching", "labelling",  "conversion", "scaling", "record", "plugin"};
  std::set<std::string_view> ids;
  for (const rules::Rule* rule : rules::rules()) {
    CAPTURE(rule->id);
    CHECK(ids.insert(rule->id).second);
    CHECK(topics.count(rule->topic) == 1);
    CHECK(rule->severity != base::Severity::off);
    CHECK(rule->summary.size() > 15);
    CHECK(rule->summary.size() <= 90);
    CHECK_FALSE(rule->summary.ends_with("."));
    CHECK(rule->explanation.size() > 80);
    CHECK(rule->explanation.ends_with("."));
    CHECK_FALSE(rule->source.empty());
    CHECK_FALSE(rule->bad.empty());
    CHECK_FALSE(rule->good.empty());
  }
}

TEST_CASE("rules are found by id, and a mistyped id leads to the nearest") {
  REQUIRE(rules::rule_by_id("duplicate-id") != nullptr);
  CHECK(rules::rule_by_id("duplicate-id")->id == "duplicate-id");
  CHECK(rules::rule_by_id("duplicate") == nullptr);
  CHECK(rules::nearest_rule("duplicat-id") == "duplicate-id");
  CHECK(rules::nearest_rule("unknown-foood") == "unknown-food");
  CHECK(rules::nearest_rule("zzzz") == "");
}

TEST_CASE("the reference page in core/rules/rules.md is the rules' own text") {
  const std::string page = tests::project_file("core/rules/rules.md");
  const std::string begin = "<!-- rules: made by reference_page() -->\n";
  const std::size_t from = page.find(begin);
  const std::size_t to = page.find("<!-- end of rules -->");
  REQUIRE(from != std::string::npos);
  REQUIRE(to != std::string::npos);
  const std::string committed = page.substr(from + begin.size(), to - from - begin.size());
  const std::string made = rules::reference_page();
  if (std::getenv("TAMIS_WRITE_REFERENCE") != nullptr && committed != made) {
    std::ofstream(std::string(TAMIS_SOURCE_DIR) + "/core/rules/rules.md", std::ios::binary)
        << page.substr(0, from + begin.size()) << made << page.substr(to);
  }
  CHECK((committed == made));
  for (const rules::Rule* rule : rules::rules()) {
    const std::string row = "| [" + std::string(rule->id) + "](#";
    CHECK(made.find(row) != std::string::npos);
  }
}
