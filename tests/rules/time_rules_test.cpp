#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;
using tests::check_text;
using tests::kitchen_of;

namespace {

const char* const house = R"(<means word="overnight" time="10 to 16 h"/>)";

/// The findings of topic "order" and "temperature", a line each without their places.
std::string said(const tests::Checked& checked) {
  std::string out;
  for (const base::Finding& finding : checked.findings) {
    const rules::Rule* rule = rules::rule_by_id(finding.rule);
    if (rule == nullptr || (rule->topic != "order" && rule->topic != "temperature")) continue;
    out += (out.empty() ? "" : "\n") + finding.rule + ": " + finding.message;
  }
  return out;
}

}  // namespace

TEST_CASE("a contradiction of times names the steps, the figures and the places") {
  const tests::Checked checked = check_part(R"(<step id="glaze" makes="glaze">Melt the glaze.</step>
<step makes="cool" unattended="35 min" hands="5 min">Cool the <use of="glaze">glaze</use>.</step>
<step makes="strained" hands="20 min">Strain the <use of="cool">glaze</use>.</step>
<step after="glaze" at-most="30 min">Pour the <use of="strained">glaze</use> over.</step>)");
  CHECK(said(checked) ==
        "contradictory-times: \"Pour the glaze over\" is to come at most 30 min after \"Melt the glaze\", and at least 60 min must lie between");
  REQUIRE(checked.findings.size() == 1);
  CHECK(checked.marked() == "30 min");
  REQUIRE(checked.findings[0].related.size() == 2);
  CHECK(checked.source->slice(checked.findings[0].related[0].where) == "20 min");
  CHECK(checked.findings[0].related[1].message == "\"Cool the glaze\" takes at least 40 min");
}

TEST_CASE("times between steps: what is said, and what is let be") {
  struct Row {
    const char* part;
    const char* expected;
  };
  const Row rows[] = {
      {R"(<step id="a">Mix.</step><step after="a" at-least="6 h" at-most="2 h">Bake.</step>)",
       "contradictory-times: \"Bake\" is to come at least 6 h and at most 2 h after \"Mix\""},
      {R"(<step id="a">Mix.</step><step after="a" at-least="2 h" at-most="6 h">Bake.</step>)", ""},
      // "within" in the sentence counts from what the step goes on with.
      {R"(<step makes="glaze" hands="4 min">Melt the glaze.</step><step hands="15 min">Pour the <use of="glaze">glaze</use> over, <time>within 10 min</time>.</step>)",
       "no-time-within-limit: \"Pour the glaze over, within 10 min\" is to be done within 10 min, and takes 15 min of hands-on work"},
      {R"(<step makes="glaze" hands="4 min">Melt the glaze.</step><step hands="5 min">Pour the <use of="glaze">glaze</use> over, <time>within 10 min</time>.</step>)", ""},
      // The work between is another person's, or may be left out.
      {R"(<ingredient id="frozen" name="cakes">1 kg</ingredient><step id="melt" makes="glaze">Melt the glaze.</step><step who="commis" hands="15 min" makes="cake">Unmould the <use of="frozen">cakes</use>.</step><step after="melt" at-most="10 min">Pour the <use of="glaze">glaze</use> over the <use of="cake">cake</use>.</step>)", ""},
      {R"(<step id="melt" makes="glaze">Melt the glaze.</step><step optional="yes" hands="15 min">Polish the mould.</step><step after="melt" at-most="10 min">Pour the <use of="glaze">glaze</use> over.</step>)", ""},
      // Days.
      {R"(<step day="1" makes="a">Mix.</step><step day="1">Fold the <use of="a">a</use>.</step>)", ""},
      {R"(<step day="3" makes="a">Mix.</step><step day="2">Fold the <use of="a">a</use>.</step>)",
       "days-out-of-order: \"Fold the a\" is on day 2 and waits for \"Mix\", which is on day 3"},
      {R"(<step day="1" makes="a" unattended="44 h">Cure.</step><step day="2">Smoke the <use of="a">a</use>.</step>)",
       "days-out-of-order: \"Smoke the a\" is on day 2, and what it waits for since day 1 is not done by then"},
      {R"(<step day="1" makes="a" unattended="20 h">Cure.</step><step day="2">Smoke the <use of="a">a</use>.</step>)", ""},
      // The night.
      {R"(<step day="1" makes="a">Rest <time>overnight</time>.</step><step day="1">Roll the <use of="a">a</use>.</step>)",
       "overnight-against-days: \"Roll the a\" is on day 1, and what it waits for rests overnight from day 1: \"Rest overnight\""},
      {R"(<step day="1" makes="a">Rest <time>overnight</time>.</step><step day="2">Roll the <use of="a">a</use>.</step>)", ""},
      {R"(<step day="1" makes="a">Rest <time>4 h</time> or <time>overnight</time>.</step><step day="1">Roll the <use of="a">a</use>.</step>)", ""},
      {R"(<step day="1" makes="a">Rest <time>overnight</time>.</step><step>Roll the <use of="a">a</use>.</step>)", ""},
      // The word and the figure.
      {R"(<step unattended="overnight">Rest for <time>5 h</time>.</step>)",
       "word-against-house-meaning: \"overnight\" means 10–16 h in this house, and here it is 5 h"},
      {R"(<step>Rest <time>overnight</time> (<time>6 h</time>).</step>)",
       "word-against-house-meaning: \"overnight\" means 10–16 h in this house, and here it is 6 h"},
      {R"(<step>Rest <time>overnight</time> (<time>12 h</time>).</step>)", ""},
      {R"(<step>Rest <time>at least 4 h</time>, better <time>overnight</time>.</step>)", ""},
      {R"(<step>Rest <time>1 h</time> at room temperature, then <time>overnight</time> in the fridge.</step>)", ""},
      {R"(<step unattended="14 h">Rest <time>1 h</time> on the bench, then <time>overnight</time> in the fridge.</step>)", ""},
      // The step's own times against its sentence.
      {R"(<step hands="10 min">Trim for <time of="hands">20 min</time>.</step>)",
       "step-shorter-than-its-sentence: the sentence says 20 min, and the step gives 10 min of hands-on time"},
      {R"(<step hands="2 min" unattended="1 h">Rest <time of="unattended">2 h</time>.</step>)",
       "step-shorter-than-its-sentence: the sentence says 2 h, and the step gives 60 min of unattended time"},
      {R"(<step hands="12 min">Cook <time>5 min</time>.</step>)", ""},
      {R"(<step hands="3 min">Bake <time>40 min</time>.</step>)", ""},
      {R"(<step hands="2 min" unattended="1 h">Rest <time of="unattended">30 min</time>, turn, rest again.</step>)", ""},
      {R"(<step unattended="about 20 min">Rest <time>20 to 25 min</time>.</step>)", ""},
      // Used above its making.
      {R"(<step id="s" after="b">Brush with the <use of="syrup">syrup</use>.</step><step id="b" makes="syrup">Boil.</step>)", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.part);
    CHECK(said(check_part(row.part, kitchen_of(house))) == row.expected);
  }
}

TEST_CASE("a circle of three steps is told with all of them") {
  const tests::Checked checked = check_part(R"(<step makes="a">Mix the <use of="c">c</use>.</step>
<step makes="b">Fold the <use of="a">a</use>.</step><step makes="c">Chill the <use of="b">b</use>.</step>)");
  CHECK(said(checked) ==
        "circular-steps: \"Mix the c\" waits for \"Chill the b\", which waits for \"Fold the a\", which waits for the first");
  CHECK(checked.findings.front().related.size() == 2);
}

TEST_CASE("components may stand in any order") {
  CHECK(said(check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="a" lang="en"><title>A</title>
<component id="assembly" title="Assembly"><step>Fill the case with the <use of="cream">cream</use> and the <use of="syrup">syrup</use>.</step></component>
<component id="cream" title="Cream"><step>Whip the cream.</step></component>
<component id="glaze" title="Glaze"><step makes="syrup">Boil.</step></component></fiche>)")) == "");
}

TEST_CASE("keeping: used on the last day is right, a day later is not, and what is frozen is let be") {
  const auto kept = [](const char* keep, int day) {
    return said(check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><title>A</title>"
                           "<component id=\"cream\" title=\"Cream\" day=\"1\"><step hands=\"10 min\">Cook the cream.</step>" +
                           std::string(keep) + "</component><component id=\"cake\" title=\"Cake\"><step day=\"" + std::to_string(day) +
                           "\">Fill with the <use of=\"cream\">cream</use>.</step></component></fiche>"));
  };
  const char* two_days = R"(<keep where="fridge" at="at most 4 °C" for="2 days"/>)";
  CHECK(kept(two_days, 2) == "");
  CHECK(kept(two_days, 3) == "");
  CHECK(kept(two_days, 4) == "kept-too-long: \"Cream\" keeps 2 days, and is made on day 1 and used on day 4");
  CHECK(kept(R"(<keep where="fridge" at="at most 4 °C" for="2 days">Freezes for a month.</keep>)", 4) == "");
  CHECK(kept(R"(<keep where="fridge" for="2 days"/><keep where="dry store" for="2 weeks"/>)", 4) == "");
  CHECK(kept(R"(<keep where="fridge"/>)", 4) == "");
}
