#include <map>

#include "core/rules/rule.h"
#include "tests/change/random_fiche.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

std::map<std::string, int> said_of(const std::string& xml) {
  const fiche::Kitchen kitchen;
  std::map<std::string, int> said;
  for (const base::Finding& finding : rules::check(*document_of(xml), kitchen, fiche::empty_library())) {
    // What random amounts come to is chance, and may become known by a swap to a food that the table has a density of.
    const rules::Rule* rule = rules::rule_by_id(finding.rule);
    if (rule != nullptr && rule->topic == "balance") continue;
    ++said[finding.rule];
  }
  return said;
}

}  // namespace

TEST_CASE("the check says nothing of what a conversion made that it did not say of the author's own") {
  std::mt19937 random(7);
  for (const System system : {System::metric, System::us, System::imperial}) {
    for (unsigned seed = 0; seed < fiches_tried; ++seed) {
      const std::string own = RandomFiche(seed + 2000, system).fiche(true);
      const std::string made = converted(own, random_wish(random)).xml;
      std::map<std::string, int> before = said_of(own);
      for (const auto& [rule, times] : said_of(made)) {
        CAPTURE(own, made, rule, times);
        CHECK(times <= before[rule]);
      }
    }
  }
}

TEST_CASE("the check is silent on author's figures of both systems, whichever of them is shown") {
  const std::string own = fiche_around(
      "<ingredient food=\"butter-unsalted\" also=\"8 oz\">225 g</ingredient>"
      "<ingredient food=\"milk-whole\" also=\"1 cup\">240 ml</ingredient>"
      "<ingredient food=\"flour-wheat-white\" also=\"1 cup\">125 g</ingredient>"
      "<step>Bake at <oven-temp mode=\"static\" also=\"350 °F\">180 °C</oven-temp> to <food-temp also=\"165 °F\">74 °C</food-temp>.</step>",
      "units=\"us\"");
  REQUIRE(said_of(own).empty());
  for (const System units : {System::metric, System::us, System::imperial}) {
    for (const By by : {By::as_written, By::mass, By::volume, By::both}) {
      for (const char* oven : {"", "fan"}) {
        const Result made = converted(own, {units, by, oven, ""});
        CAPTURE(made.xml);
        CHECK(said_of(made.xml).empty());
        CHECK(converted(made.xml, wish(System::metric)).xml == own);
      }
    }
  }
}
