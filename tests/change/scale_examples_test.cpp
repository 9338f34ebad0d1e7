#include "core/rules/rule.h"
#include "tests/change/scaling.h"
#include "tests/shared_files.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

/// How many times the batch is made for a rule's bad example to raise it.
std::string factor_for(std::string_view rule) {
  if (rule == "scaled-beyond-tolerance" || rule == "count-rounded" || rule == "surplus") return "1/3";
  if (rule == "below-least" || rule == "mould-changed") return "1/3";
  if (rule == "leavening-not-scaled" || rule == "seasoning-not-scaled") return "5";
  return "3";
}

}  // namespace

TEST_CASE("a scaling rule's bad example raises it, and its good one nothing") {
  std::size_t seen = 0;
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic != "scaling") continue;
    ++seen;
    CAPTURE(rule->id);
    const fiche::Kitchen kitchen = small_kitchen();
    const Result bad = scaled(rules::example_document(rule->bad), by_factor(factor_for(rule->id)), kitchen);
    REQUIRE(bad.finding(rule->id) != nullptr);
    for (const base::Finding& finding : bad.findings) CHECK(finding.rule == rule->id);
    CHECK(bad.findings.size() == 1);
    CHECK(bad.findings.front().severity >= rule->severity);
    CHECK_FALSE(bad.findings.front().message.empty());
    CHECK_FALSE(bad.findings.front().message.ends_with('.'));
    CHECK_FALSE(bad.findings.front().advice.empty());
    CHECK_FALSE(bad.findings.front().advice.ends_with('.'));
    CHECK_FALSE(bad.findings.front().source.empty());
    const Result good = scaled(rules::example_document(rule->good), by_factor(factor_for(rule->id)), kitchen);
    CAPTURE(good.findings.empty() ? "" : good.findings.front().rule + ": " + good.findings.front().message);
    CHECK(good.findings.empty());
  }
  CHECK(seen == 15);
}

TEST_CASE("every finding of a scaling has a rule that explains it") {
  const std::string rows = tests::project_file("core/change/scale.h");
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic == "scaling") CHECK(rows.find("///   " + std::string(rule->id)) != std::string::npos);
  }
}
