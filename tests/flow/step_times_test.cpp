#include <catch2/catch.hpp>

#include <memory>
#include <string>

#include "core/flow/step_times.h"
#include "core/format/format.h"

namespace {

using namespace tamis;
using flow::StepTimes;
using flow::TimeRange;
using Seconds = flow::TimeNetwork::Seconds;

constexpr Seconds minute = 60;
constexpr Seconds hour = 3600;

/// A fiche of one component (or of components, when the text has its own), its flow and its times.
struct Read {
  std::shared_ptr<const fiche::Document> document;
  std::shared_ptr<const fiche::Document> kitchen_document;
  fiche::Kitchen kitchen;
  fiche::Fiche fiche;
  flow::Flow flow;
  StepTimes times;
};

std::unique_ptr<Read> read(const std::string& inner, const std::string& kitchen = {}) {
  auto out = std::make_unique<Read>();
  const auto document = [](const char* path, const std::string& text) {
    const format::Read got = format::read(std::make_shared<const base::Source>(path, text));
    REQUIRE(got.document);
    REQUIRE(got.findings.empty());
    return got.document;
  };
  const bool whole = inner.find("<component") != std::string::npos;
  out->document = document("a.fiche.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><title>A</title>" +
                                              (whole ? inner : "<component id=\"c\" title=\"C\">" + inner + "</component>") + "</fiche>");
  out->kitchen_document = document("kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\">" + kitchen + "</kitchen>");
  out->kitchen = fiche::read_kitchen(out->kitchen_document);
  out->fiche = fiche::read_fiche(*out->document, out->kitchen);
  out->flow = flow::read_flow(out->fiche, fiche::empty_library());
  out->times = flow::read_step_times(out->fiche, out->flow);
  return out;
}

TimeRange length_of(const std::string& step, const std::string& kitchen = {}) {
  const auto got = read(step, kitchen);
  return got->times.lengths.at(0).whole;
}

TEST_CASE("a step is as long as its hands-on and its unattended time, or its sentence where that is longer") {
  struct Row {
    const char* step;
    TimeRange expected;
  };
  const Row rows[] = {
      {R"(<step hands="5 min">Whisk.</step>)", {5 * minute, 5 * minute}},
      {R"(<step hands="5 min" unattended="2 h">Knead, rest.</step>)", {125 * minute, 125 * minute}},
      {R"(<step unattended="12 to 24 h">Rest.</step>)", {12 * hour, 24 * hour}},
      {R"(<step>Simmer <time>15 to 20 min</time>.</step>)", {15 * minute, 20 * minute}},
      {R"(<step>Simmer <time>at least 4 h</time>.</step>)", {4 * hour, {}}},
      {R"(<step>Keep <time>up to 2 h</time>.</step>)", {0, 2 * hour}},
      {R"(<step>Bake <time>about 60 min</time>.</step>)", {45 * minute, 75 * minute}},
      {R"(<step hands="3 min">Bake <time>40 min</time>.</step>)", {40 * minute, 40 * minute}},
      {R"(<step>Bake <time mode="fan">8–10 min</time>, <time mode="deck">10–12 min</time> on the deck.</step>)", {8 * minute, {}}},
      {R"(<step>Simmer <time>10 min</time>, stir, simmer <time>5 min</time>.</step>)", {10 * minute, {}}},
      {R"(<step>Rest <time>1 h</time> or <time>overnight</time>.</step>)", {1 * hour, {}}},
      {R"(<step>Stir every <time>30 min</time>.</step>)", {0, {}}},
      {R"(<step>Use <time>within 10 min</time>.</step>)", {0, {}}},
      {R"(<step>Rest <time>briefly</time>.</step>)", {0, {}}},
      {R"(<step>Mix.<why>It takes <time>3 h</time> else.</why></step>)", {0, {}}},
      {R"(<step repeat="3" unattended="30 min">Fold and rest.</step>)", {30 * minute, 90 * minute}},
      {R"(<step>Soak <time>1/3 s</time>.</step>)", {0, 1}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.step);
    const TimeRange got = length_of(row.step);
    CHECK(got.least == row.expected.least);
    CHECK(got.most == row.expected.most);
  }
}

TEST_CASE("a figure for another batch is not the step's") {
  const auto got = read(R"(<yield id="one" portions="10"/><yield id="two" portions="20"/>
      <component id="c" title="C"><step>Mix <time batch="two">9 min</time> or <time batch="one">5 min</time>.</step></component>)");
  CHECK(got->times.lengths.at(0).whole.least == 5 * minute);
}

TEST_CASE("a word of the trade takes the house's meaning, else the usual one") {
  const char* step = R"(<step unattended="overnight">Rest.</step>)";
  CHECK(length_of(step) == TimeRange{8 * hour, 12 * hour});
  CHECK(length_of(step, R"(<means word="overnight" time="10 to 16 h"/>)") == TimeRange{10 * hour, 16 * hour});
}

TEST_CASE("a step starts when what it takes has been made") {
  const auto got = read(R"(<step makes="syrup" hands="10 min">Boil.</step><step hands="5 min">Mix.</step>
      <step hands="2 min">Add the <use of="syrup">syrup</use>.</step>)");
  const auto solution = got->times.network.solve();
  REQUIRE(solution.consistent);
  const auto windows = got->times.network.windows_from(StepTimes::start(0), solution);
  CHECK(windows.at(StepTimes::end(2)).least >= 12 * minute);
  CHECK(got->times.reasons.size() == got->times.network.constraints().size());
}

TEST_CASE("waits, limits and days bind the steps, and each constraint knows what states it") {
  const auto got = read(R"(<component id="c" title="C" day="2"><step id="a" makes="x" hands="10 min">Mix.</step>
      <step after="a" at-least="2 h" at-most="3 h">Fold the <use of="x">x</use>.</step></component>)");
  const auto solution = got->times.network.solve();
  REQUIRE(solution.consistent);
  const auto windows = got->times.network.windows_from(StepTimes::origin, solution);
  CHECK(windows.at(StepTimes::start(0)) == flow::TimeNetwork::Window{29 * hour, 47 * hour - 130 * minute});
  CHECK(windows.at(StepTimes::start(1)).least == 29 * hour + 130 * minute);
  CHECK(windows.at(StepTimes::start(1)).most == 47 * hour);
  CHECK(got->times.days.at(0) == 2);
  bool wait = false;
  for (const flow::TimeReason& reason : got->times.reasons) {
    if (reason.kind != flow::TimeReason::Kind::wait) continue;
    wait = true;
    CHECK(reason.step == 1);
    CHECK(reason.other == 0);
    CHECK(reason.node == got->fiche.steps.at(1).node);
  }
  CHECK(wait);
}

TEST_CASE("the day of work is the hours of the kitchen's people") {
  const auto got = read(R"(<step day="1">Mix.</step>)", R"(<person id="a" from="08:00" until="17:00"/><person id="b" from="09:30" until="18:00"/>)");
  const auto windows = got->times.network.windows_from(StepTimes::origin, got->times.network.solve());
  CHECK(windows.at(StepTimes::start(0)) == flow::TimeNetwork::Window{8 * hour, 18 * hour});
  const auto night = read(R"(<step day="1">Mix.</step>)", R"(<person id="a" from="22:00" until="06:00"/>)");
  const auto usual = night->times.network.windows_from(StepTimes::origin, night->times.network.solve());
  CHECK(usual.at(StepTimes::start(0)) == flow::TimeNetwork::Window{5 * hour, 23 * hour});
}

TEST_CASE("a component's day binds its steps until six hours have gone by") {
  const auto got = read(R"(<component id="c" title="C" day="1"><step unattended="7 h">Prove.</step><step>Bake.</step></component>)");
  CHECK(got->times.days.at(0) == 1);
  CHECK_FALSE(got->times.days.at(1).has_value());
}

TEST_CASE("a step that some leave out may take no time") {
  const auto got = read(R"(<step id="a">Mix.</step><step optional="yes" unattended="2 h">Rest.</step>
      <step after="a" at-most="1 h">Bake.</step>)");
  CHECK(flow::time_conflicts(got->times).empty());
}

TEST_CASE("steps on a circle leave no contradiction behind, and neither do strange values") {
  for (const char* text :
       {R"(<step makes="a" hands="5 min">Mix the <use of="b">b</use>.</step><step makes="b" hands="5 min">Mix the <use of="a">a</use>.</step>)",
        R"(<step id="a" after="a" at-least="1 h">Mix.</step>)", R"(<step day="0">Mix.</step><step day="999999999">Mix.</step>)",
        R"(<step hands="999999999 days" unattended="999999999 days" repeat="999999">Mix.</step>)",
        R"(<step at-most="nothing" day="x" hands="">Mix.</step>)", R"(<step repeat="-3" hands="5 min">Mix.</step>)"}) {
    CAPTURE(text);
    CHECK(flow::time_conflicts(read(text)->times).empty());
  }
}

TEST_CASE("contradictions are told one by one, each once") {
  const auto got = read(R"(<step id="mix" makes="a">Mix.</step><step unattended="2 h" makes="b">Rest the <use of="a">a</use>.</step>
      <step id="bake" after="mix" at-most="1 h">Bake the <use of="b">b</use>.</step>
      <step after="bake" at-least="3 h" at-most="2 h">Cut.</step>)");
  const auto conflicts = flow::time_conflicts(got->times);
  REQUIRE(conflicts.size() == 2);
  CHECK(flow::time_conflicts(got->times, 1).size() == 1);
}

}  // namespace
