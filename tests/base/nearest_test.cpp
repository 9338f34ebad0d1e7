#include <catch2/catch.hpp>

#include <array>
#include <string>

#include "core/base/finding.h"
#include "core/base/nearest.h"

namespace {

using namespace tamis::base;

TEST_CASE("edits are counted in characters, a swap of neighbours as one", "[nearest]") {
  struct Row {
    const char* a;
    const char* b;
    std::size_t edits;
  };
  for (const Row& row : {Row{"", "", 0}, Row{"butter", "butter", 0}, Row{"buter", "butter", 1},
                         Row{"bttuer", "butter", 2}, Row{"flour", "fluor", 1}, Row{"crème", "creme", 1},
                         Row{"", "abc", 3}, Row{"kitten", "sitting", 3}}) {
    CAPTURE(row.a, row.b);
    CHECK(edit_distance(row.a, row.b, 10) == row.edits);
    CHECK(edit_distance(row.b, row.a, 10) == row.edits);
  }
}

TEST_CASE("counting stops above the limit", "[nearest]") {
  CHECK(edit_distance("aaaaaaaa", "bbbbbbbb", 3) == 4);
  CHECK(edit_distance("a", "abcdefgh", 3) == 4);
  CHECK(edit_distance(std::string(5000, 'a'), std::string(5000, 'b'), 3) == 4);
}

TEST_CASE("the nearest word is said only when it is near", "[nearest]") {
  constexpr std::array<std::string_view, 5> words = {"ingredient", "component", "step", "g", "Löffel"};
  CHECK(nearest("ingrediant", words) == "ingredient");
  CHECK(nearest("STEPP", words) == "step");
  CHECK(nearest("löfel", words) == "Löffel");
  CHECK(nearest("mousse", words).empty());
  CHECK(nearest("x", words).empty());
  CHECK(nearest("", words).empty());
  CHECK(nearest("G", words) == "g");
}

TEST_CASE("findings at one place keep their order", "[finding]") {
  std::vector<Finding> findings(3);
  findings[0].where = {7, 9};
  findings[0].rule = "late";
  findings[1].where = {2, 3};
  findings[1].rule = "first";
  findings[2].where = {2, 9};
  findings[2].rule = "second";
  sort_by_place(findings);
  CHECK(findings[0].rule == "first");
  CHECK(findings[1].rule == "second");
  CHECK(findings[2].rule == "late");
  CHECK(severity_name(Severity::advice) == "advice");
}

}  // namespace
