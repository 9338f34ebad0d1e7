#include <catch2/catch.hpp>

#include "core/base/utf8.h"
#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_text;

namespace {

/// The library in which the examples' references are looked for.
tests::TextLibrary example_library() { return {}; }

/// The kitchen in which they stand.
fiche::Kitchen kitchen_of_examples(const rules::Rule& rule) {
  format::Read read = format::read(std::make_shared<const base::Source>("kitchen.xml", rules::example_kitchen(rule)));
  REQUIRE(read.document);
  CHECK(read.findings.empty());
  return fiche::read_kitchen(read.document);
}

}  // namespace

TEST_CASE("a rule's bad example raises that rule, once, and no other") {
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic == "conversion") continue;  // tests/change/examples_test.cpp
    if (rule->topic == "scaling") continue;     // tests/change/scale_examples_test.cpp
    if (rule->topic == "plugin") continue;      // tests/lua
    if (rule->topic == "record") continue;      // tests/record
    tests::TextLibrary library = example_library();
    const std::string text = rules::example_document(rule->bad);
    const tests::Checked checked = check_text(text, kitchen_of_examples(*rule), library);
    CAPTURE(rule->id, checked.lines());
    CHECK(checked.rules() == rule->id);
  }
}

TEST_CASE("a rule's good example raises nothing") {
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic == "record") continue;  // tests/record
    tests::TextLibrary library = example_library();
    const std::string text = rules::example_document(rule->good);
    const tests::Checked checked = check_text(text, kitchen_of_examples(*rule), library);
    CAPTURE(rule->id);
    CHECK(checked.lines() == "");
  }
}

TEST_CASE("every finding has words, a severity, a source and a place in the file") {
  for (const rules::Rule* rule : rules::rules()) {
    tests::TextLibrary library = example_library();
    const tests::Checked checked = check_text(rules::example_document(rule->bad), kitchen_of_examples(*rule), library);
    for (const base::Finding& finding : checked.findings) {
      CAPTURE(rule->id, finding.message, finding.advice);
      CHECK_FALSE(finding.message.empty());
      CHECK_FALSE(finding.advice.empty());
      CHECK(finding.severity != base::Severity::off);
      CHECK(finding.where.begin <= finding.where.end);
      CHECK(finding.where.end <= checked.source->bytes().size());
      CHECK_FALSE(finding.message.ends_with("."));
      CHECK_FALSE(finding.advice.ends_with("."));
      if (rule->run != nullptr) {
        CHECK_FALSE(finding.source.empty());
        CHECK(finding.severity >= rule->severity);
      }
    }
  }
}

TEST_CASE("a sure fix of a bad example leaves nothing to say") {
  std::size_t mended = 0;
  for (const rules::Rule* rule : rules::rules()) {
    tests::TextLibrary library = example_library();
    const tests::Checked checked = check_text(rules::example_document(rule->bad), kitchen_of_examples(*rule), library);
    if (checked.findings.empty() || checked.findings.front().edits.empty()) continue;
    ++mended;
    CAPTURE(rule->id, tests::mended(checked));
    CHECK(check_text(tests::mended(checked), kitchen_of_examples(*rule), library).lines() == "");
  }
  CHECK(mended >= 6);
}

TEST_CASE("a kitchen switches every rule off and sets its severity") {
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->run == nullptr) continue;
    tests::TextLibrary library = example_library();
    fiche::Kitchen kitchen = kitchen_of_examples(*rule);
    const std::string text = rules::example_document(rule->bad);
    CAPTURE(rule->id);
    kitchen.severities[std::string(rule->id)] = base::Severity::advice;
    const tests::Checked milder = check_text(text, kitchen, library);
    REQUIRE(milder.findings.size() == 1);
    CHECK(milder.findings.front().severity == base::Severity::advice);
    kitchen.severities[std::string(rule->id)] = base::Severity::off;
    for (const base::Finding& finding : check_text(text, kitchen, library).findings) CHECK(finding.rule != rule->id);
  }
}
