#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/cli/process.h"

using namespace tamis::tests;

TEST_CASE("the figures of the trade are listed with their sources, as text and as JSON", "[cli]") {
  const Ran text = run_tamis({"explain", "--figures"});
  CHECK(text.exit == 0);
  CHECK(text.out.find("\negg yolk sets: 70 °C\n  H. McGee, On Food and Cooking: undiluted\n") != std::string::npos);
  const Ran json = run_tamis({"explain", "--figures", "--report", "json"});
  CHECK(json.exit == 0);
  CHECK(json.out.starts_with("{\"schema\": 1, \"figures\": ["));
  CHECK(json.out.find(R"({"name": "egg yolk sets", "low": 70, "high": 70, "unit": "°C", "source": "H. McGee, On Food and Cooking: undiluted"})") !=
        std::string::npos);
  CHECK(std::count(json.out.begin(), json.out.end(), '{') > 70);
}
