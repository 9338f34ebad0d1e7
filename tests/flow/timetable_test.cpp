#include "core/flow/timetable.h"

#include <catch2/catch.hpp>

#include <cstdio>
#include <string>

#include "core/flow/step_times.h"
#include "tests/flow/flowing.h"

// Times worked out by hand in the comments; the house works from 05:00 to 23:00 where no kitchen file says otherwise.

using namespace tamis;

namespace {

/// "-1 22:50 to 06:00, 0 18:40 to 19:00": the day counted from that of service; "?" no length stated, "!" out of hours.
std::string laid(const std::string& inside, const std::string& clock = "19:00") {
  const auto flow = tests::flow_of("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\"><title>F</title>" + inside + "</fiche>");
  const flow::Timetable table = flow::lay_backwards(flow->fiche, flow->flow, *flow::clock_time(clock));
  if (!table.fits) return "does not fit";
  std::string out;
  for (const flow::TimetableStep& one : table.steps) {
    const auto time = [&out](flow::TimeNetwork::Seconds seconds, bool day) {
      const auto days = seconds >= 0 ? seconds / 86400 : -((-seconds + 86399) / 86400);
      const auto rest = seconds - days * 86400;
      char buffer[48];
      std::snprintf(buffer, sizeof buffer, "%02d:%02d", static_cast<int>(rest / 3600), static_cast<int>(rest / 60 % 60));
      if (day) out += std::to_string(days) + " ";
      out += buffer;
    };
    if (!out.empty()) out += ", ";
    time(one.start, true);
    out += " to ";
    time(one.end, false);
    out += one.stated ? "" : "?";
    out += one.out_of_hours ? "!" : "";
  }
  return out;
}

std::string component(const std::string& steps, const std::string& more = {}) {
  return "<component id=\"c\" title=\"C\"" + more + "><ingredient id=\"i\" food=\"milk-whole\">1 kg</ingredient>" + steps + "</component>";
}

const std::string start = "<step makes=\"a\" hands=\"10 min\" unattended=\"30 min\">Heat the <use of=\"i\">milk</use>.</step>";

}  // namespace

// 20 min before 19:00, 40 min before that.
TEST_CASE("steps are laid as late as those behind them allow") {
  CHECK(laid(component(start + "<step hands=\"20 min\">Serve the <use of=\"a\">milk</use>.</step>")) == "0 18:00 to 18:40, 0 18:40 to 19:00");
  // 18:40 less at least 2 h is 16:40, less 40 min 16:00.
  CHECK(laid(component(start + "<step hands=\"20 min\" at-least=\"2 h\">Serve the <use of=\"a\">milk</use>.</step>")) ==
        "0 16:00 to 16:40, 0 18:40 to 19:00");
  // Of 30 to 40 minutes the middle, 35.
  CHECK(laid(component("<step>Simmer the <use of=\"i\">milk</use> for <time>30 to 40 min</time>.</step>")) == "0 18:25 to 19:00");
  CHECK(laid(component("<step>Pour the <use of=\"i\">milk</use>.</step>")) == "0 19:00 to 19:00?");
}

// 20 min before 07:00 is 06:40; chilling 9 h begins at 21:40; heating would begin at 21:00. With 12 h it would begin at 18:00 the day
// before; with 20 h at 10:00 the day before. Chilling 3 h before 07:00 ends at 06:40 and begins 03:40, hands-on work at 03:00 falls
// into the night: it goes to 22:50 the evening before, so that its 10 min end at 23:00; the chilling begins then at once, 23:30.
TEST_CASE("hands-on work in the night goes to the evening before") {
  const auto chilled = [](const std::string& time) {
    return laid(component(start + "<step do=\"chill\" makes=\"b\" unattended=\"" + time + "\">Chill the <use of=\"a\">milk</use>.</step>" +
                          "<step hands=\"20 min\">Serve the <use of=\"b\">milk</use>.</step>"),
                "07:00");
  };
  CHECK(chilled("9 h") == "-1 21:00 to 21:40, -1 21:40 to 06:40, 0 06:40 to 07:00");
  CHECK(chilled("3 h") == "-1 22:50 to 23:30, -1 23:30 to 02:30, 0 06:40 to 07:00");
}

// Made on a day from 05:00 on and finished 20 h later: between 01:10 and 04:30, for 1 h before 05:30.
TEST_CASE("work that cannot leave the night is marked") {
  CHECK(laid(component("<step id=\"x\" makes=\"a\" day=\"1\" hands=\"10 min\">Make the <use of=\"i\">milk</use>.</step>"
                       "<step hands=\"1 h\" after=\"x\" at-least=\"20 h\" at-most=\"20 h\">Finish the <use of=\"a\">milk</use>.</step>"),
             "05:30") == "-1 08:20 to 08:30, 0 04:30 to 05:30!");
}

// Day 1 is the day before; the last step of day 1 may begin until 23:00.
TEST_CASE("the last day the fiche speaks of is the day of service") {
  CHECK(laid(component("<step makes=\"a\" day=\"1\" hands=\"1 h\">Make the <use of=\"i\">milk</use>.</step>"
                       "<step day=\"2\" hands=\"20 min\">Serve the <use of=\"a\">milk</use>.</step>")) ==
        "-1 22:00 to 23:00, 0 18:40 to 19:00");
}

// 5 h after at most 1 h: a contradiction.
TEST_CASE("what contradicts itself does not fit") {
  CHECK(laid(component("<step id=\"x\" makes=\"a\" hands=\"1 h\">Make the <use of=\"i\">milk</use>.</step>"
                       "<step hands=\"20 min\" after=\"x\" at-least=\"5 h\" at-most=\"1 h\">Serve the <use of=\"a\">milk</use>.</step>")) ==
        "does not fit");
}
