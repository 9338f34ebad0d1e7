#include "core/rules/rule.h"
#include "tests/change/swapping.h"
#include "tests/shared_files.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

/// The wish under which a rule's bad example raises it.
ConvertWish wish_for(std::string_view rule) {
  ConvertWish made = wish(System::us);
  if (rule == "changed-after-conversion") made.units = System::metric;
  if (rule == "no-density-for-conversion") made.by = By::volume;
  if (rule.starts_with("oven-mode")) made.oven = "fan";
  if (rule == "market-swap") made.market = "US";
  return made;
}

/// Of the gelatine in the bad example, and of nothing in the good one.
Result said_by_swap(const rules::Rule& rule, bool bad) {
  const std::string xml = rules::example_document(bad ? rule.bad : rule.good);
  return bad ? swapped(xml, "gelatine-leaf=gelatine-powder:225") : swapped(xml, "milk-whole=milk-whole");
}

}  // namespace

TEST_CASE("a conversion rule's bad example raises it, and its good one nothing") {
  std::size_t seen = 0;
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic != "conversion") continue;
    ++seen;
    CAPTURE(rule->id);
    const bool swap = rule->id == "food-swapped";
    const Result bad = swap ? said_by_swap(*rule, true) : converted(rules::example_document(rule->bad), wish_for(rule->id));
    REQUIRE(bad.finding(rule->id) != nullptr);
    CHECK(bad.findings.size() == 1);
    CHECK(bad.findings.front().severity >= rule->severity);
    CHECK_FALSE(bad.findings.front().message.empty());
    CHECK_FALSE(bad.findings.front().message.ends_with('.'));
    CHECK_FALSE(bad.findings.front().advice.empty());
    CHECK_FALSE(bad.findings.front().source.empty());
    const Result good = swap ? said_by_swap(*rule, false) : converted(rules::example_document(rule->good), wish_for(rule->id));
    CAPTURE(good.findings.empty() ? "" : good.findings.front().message);
    CHECK(good.findings.empty());
  }
  CHECK(seen == 8);
}

TEST_CASE("every finding of a conversion has a rule that explains it") {
  const std::string rows = tests::project_file("core/change/convert.h") + tests::project_file("core/change/swap.h");
  for (const rules::Rule* rule : rules::rules()) {
    if (rule->topic == "conversion") CHECK(rows.find("///   " + std::string(rule->id)) != std::string::npos);
  }
}
