#include "core/record/log.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <random>
#include <string>

#include "core/record/log_time.h"
#include "core/rules/rule.h"
#include "tests/record/logs.h"

using namespace tamis;
using namespace tamis::tests;

TEST_CASE("a log is read by its heading, in four languages, with commas, semicolons or tabs") {
  CHECK(read_log("time,core °C\n10:15,61.2\n10:16,61.6\n").readings() == "36900=61.2 °C 36960=61.6 °C");
  CHECK(read_log("Zeit;Kerntemperatur (°C)\n10:15:30;61,2\n10:16:00;61,6\n").readings() == "36930=61.2 °C 36960=61.6 °C");
  CHECK(read_log("heure\tsonde\n10:15\t61,2\n").readings() == "36900=61.2 °C");
  CHECK(read_log("seconds,temp_f\n0,140\n60,145.4\n").readings() == "0=60 °C 60=63 °C");
  CHECK(read_log("elapsed (min),celsius\n0,3\n1.5,4\n").readings() == "0=3 °C 90=4 °C");
  CHECK(read_log("No,date,time,probe 1\n1,2026-11-03,23:59,4\n2,2026-11-04,00:01,4.1\n").readings() ==
        "86340=4 °C 86460=4.1 °C");
  CHECK(read_log("timestamp,core\n2026-11-03T23:59:30Z,4\n2026-11-04T00:00:30Z,5\n").readings() == "86370=4 °C 86430=5 °C");
  CHECK(read_log("time,core °C,oven °C\n10:15,61.2,180\n").readings() == "36900=61.2 °C");
  CHECK(read_log("hall 2, rack 4\nserial 17\ntime,value\n10:15,61.2\n").readings() == "36900=61.2 °C");
}

TEST_CASE("a log without a heading is a time and a temperature") {
  CHECK(read_log("10:15,61.2\n10:16,61.6\n").readings() == "36900=61.2 °C 36960=61.6 °C");
  CHECK(read_log("10:15,61.2,4\n").faults() == "1:1 log-unreadable: no heading that names a time and a temperature\n");
  CHECK(read_log("").faults() == "1:1 log-unreadable: no rows in it\n");
  CHECK(read_log("time,core\n").faults() == "1:1 log-unreadable: no reading in it that can be used\n");
}

TEST_CASE("the user says what the log does not") {
  record::LogWish fahrenheit;
  fahrenheit.scale = record::Scale::fahrenheit;
  CHECK(read_log("time,core\n10:15,145.4\n", fahrenheit).readings() == "36900=63 °C");
  record::LogWish minutes;
  minutes.number_seconds = 60;
  CHECK(read_log("time,core\n1,63\n2,64\n", minutes).readings() == "60=63 °C 120=64 °C");
  record::LogWish second;
  second.column = "2";
  CHECK(read_log("time,probe 1,probe 2\n10:15,61,71\n", second).readings() == "36900=71 °C");
  second.column = "Probe 1";
  CHECK(read_log("time,probe 1,probe 2\n10:15,61,71\n", second).readings() == "36900=61 °C");
  second.column = "lid";
  CHECK(read_log("time,probe 1,probe 2\n10:15,61,71\n", second).faults() ==
        "1:1 log-unreadable: no column \"lid\" of temperatures\n");
}

TEST_CASE("what is not said is asked, never guessed") {
  const ReadLog numbers = read_log("time,core\n1,63\n2,64\n");
  CHECK(numbers.faults() == "2:1 log-unreadable: \"1\": seconds or minutes? The heading does not say\n");
  CHECK_FALSE(numbers.log.usable);
  const ReadLog columns = read_log("time,probe 1,probe 2\n10:15,61,71\n");
  CHECK(columns.faults() == "1:1 log-unreadable: more than one column of temperatures: \"probe 1\", \"probe 2\"\n");
  CHECK_FALSE(columns.log.usable);
  CHECK(read_log("time,core\n03/11/2026 10:15,61\n")
            .faults()
            .starts_with("2:1 log-unreadable: \"03/11/2026 10:15\" is no time\n"));
}

TEST_CASE("rows that cannot be read are left out by name, and part the log") {
  const ReadLog read = read_log("time,core °C\n10:15,61\n10:16,---\n10:17,62\n10:18\n25:19,63\n,63\n10:21,64\n");
  CHECK(read.readings() == "36900=61 °C /37020=62 °C /37260=64 °C");
  CHECK(read.faults() ==
        "3:7 log-unreadable: \"---\" is no temperature\n"
        "5:1 log-unreadable: a row without a temperature\n"
        "6:1 log-unreadable: \"25:19\" is no time\n"
        "7:1 log-unreadable: a row without a time\n");
  CHECK(read.log.rows == 7);
  CHECK(read.log.usable);
}

TEST_CASE("readings that go back in time are left out, and nothing is sorted") {
  const ReadLog read = read_log("time,core °C\n10:15,61\n10:20,63\n10:18,62\n10:20,63\n10:21,64\n");
  CHECK(read.readings() == "36900=61 °C 37200=63 °C /37260=64 °C");
  CHECK(read.faults() ==
        "4:1 log-out-of-order: \"10:18\" comes after 10:20\n"
        "5:1 log-out-of-order: \"10:20\" comes twice\n");
  // Midnight is no disorder where there is a clock alone; with days it is as they say.
  CHECK(read_log("time,core\n23:59,4\n00:01,4\n").readings() == "86340=4 °C 86460=4 °C");
  CHECK(read_log("time,core\n2026-11-03 23:59,4\n2026-11-03 00:01,4\n").faults() ==
        "3:1 log-out-of-order: \"2026-11-03 00:01\" comes after 23:59\n");
  CHECK(read_log("time,core\n10:15,4\n7,4\n").faults() ==
        "3:1 log-unreadable: \"7\": seconds or minutes? The heading does not say\n");
}

TEST_CASE("faults of one kind are told eight times, then counted") {
  std::string text = "time,core °C\n10:00,61\n";
  for (int i = 1; i <= 30; ++i) text += "10:" + std::string(i < 10 ? "0" : "") + std::to_string(i) + ",\n";
  const std::string faults = read_log(text).faults();
  CHECK(std::count(faults.begin(), faults.end(), '\n') == 8);
  CHECK(faults.find("a row without a temperature; and 22 more like it\n") != std::string::npos);
}

TEST_CASE("gaps are said and part the log; slow and uneven logs by hand are none") {
  std::string steady = "time,core °C\n";
  for (int i = 0; i < 10; ++i) steady += "10:0" + std::to_string(i) + ",64\n";
  CHECK(read_log(steady).faults() == "");
  const ReadLog gap = read_log(steady + "10:31,64.5\n10:32,64.6\n");
  CHECK(gap.faults() == "12:7 log-gap: no reading for 22 min, from 10:09 to 10:31; the others come every 1 min\n");
  CHECK(gap.readings().find("/37860=64.5 °C 37920") != std::string::npos);
  CHECK(read_log("time,core\n10:00,64\n10:40,63\n11:05,64\n12:00,62\n").faults() == "");
}

TEST_CASE("leaps that no core makes are said and left out; a probe that is moved for good is not") {
  const auto with = [](const std::string& values) {
    std::string text = "time,core °C\n";
    int minute = 0;
    for (std::size_t at = 0; at < values.size();) {
      const std::size_t end = std::min(values.find(' ', at), values.size());
      text += "10:" + std::string(minute < 10 ? "0" : "") + std::to_string(minute) + "," + values.substr(at, end - at) + "\n";
      ++minute;
      at = end + 1;
    }
    return read_log(text);
  };
  const ReadLog one = with("64 64.1 91.5 64.3 64.4");
  CHECK(one.faults() == "4:7 log-spike: leaps from 64.1 °C to 91.5 °C and back to 64.3 °C within 2 min\n");
  CHECK(one.readings() == "36000=64 °C 36060=64.1 °C /36180=64.3 °C 36240=64.4 °C");
  CHECK(with("64 64.1 21 22 64.3 64.4").faults() ==
        "4:7 log-spike: leaps from 64.1 °C to 21 °C and back to 64.3 °C within 3 min\n");
  CHECK(with("64 64 -127 64 64").faults() == "4:7 log-spike: −127 °C is no temperature of food: the probe was off or broken\n");
  CHECK(with("64 64 999 999 999 64").readings() == "36000=64 °C 36060=64 °C /36300=64 °C");
  CHECK(with("64 64 21 21 21 21").faults() == "");
  CHECK(with("60 66 73 80 74 67").faults() == "");
}

TEST_CASE("readings on the other scale are not judged") {
  const ReadLog hot = read_log("time,core\n10:00,141\n10:10,152\n10:20,165\n");
  CHECK(hot.faults() == "4:7 log-wrong-scale: 165 °C is more than the food of this fiche ever is; in °F it would be 73.9 °C\n");
  CHECK_FALSE(hot.log.usable);
  const ReadLog cold = read_log("time,core °F\n10:00,12\n10:10,8\n10:20,4\n");
  CHECK(cold.faults() ==
        "4:7 log-wrong-scale: in °F this is −15.6 °C, less than the food of this fiche ever is; is it 4 °C?\n");
  CHECK_FALSE(cold.log.usable);
  CHECK_FALSE(read_log("time,core\n10:00,180\n10:30,104\n11:20,40.8\n").log.usable);
  record::LogWish sugar;
  sugar.hottest = 175;
  CHECK(read_log("time,syrup °C\n10:00,141\n10:10,152\n10:20,165\n", sugar).faults() == "");
  record::LogWish said;
  said.scale = record::Scale::celsius;
  CHECK(read_log("time,core\n10:00,141\n10:10,152\n10:20,165\n", said).log.usable);
  CHECK(read_log("time,core °F\n10:00,141\n", said).faults() ==
        "1:1 log-wrong-scale: the heading says °F, and --scale says °C\n");
  CHECK(read_log("time,core °C\n10:00,63\n10:01,145 °F\n10:02,64\n").readings() == "36000=63 °C /36120=64 °C");
}

TEST_CASE("moments are read as people and loggers write them") {
  using Kind = record::Moment::Kind;
  CHECK(record::read_moment("75")->number == 75);
  CHECK(record::read_moment("4,5")->number == 4.5);
  CHECK(record::read_moment("1:05 PM")->clock_seconds == 13 * 3600 + 300);
  CHECK(record::read_moment("12:05 am")->clock_seconds == 300);
  CHECK(record::read_moment("2026-11-03")->kind == Kind::date);
  CHECK(record::read_moment("03.11.2026 10:15")->day == record::read_moment("2026-11-03")->day);
  CHECK(record::day_text(record::read_moment("2024-02-29")->day) == "2024-02-29");
  for (const char* bad :
       {"", "10:75", "24:00", "2026-02-29", "2026-13-01", "31.04.2026", "03/11/2026", "-4", "1e5", "10:15x", "10.15.20"}) {
    CAPTURE(bad);
    CHECK_FALSE(record::read_moment(bad));
  }
}

TEST_CASE("days go there and back") {
  for (long day = 0; day < 80000; day += 17) {
    const std::string text = record::day_text(day);
    CAPTURE(text);
    REQUIRE(record::read_moment(text));
    CHECK(record::read_moment(text)->day == day);
  }
}

TEST_CASE("a log that is written out is read back, whatever its separator, scale and clock") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> celsius(-20, 99);
  for (int round = 0; round < 100; ++round) {
    const bool semicolon = random() % 2 == 0, fahrenheit = random() % 2 == 0, clock = random() % 2 == 0;
    std::string text =
        std::string("time") + (clock ? "" : " (s)") + (semicolon ? ";" : ",") + (fahrenheit ? "core °F\r\n" : "core °C\r\n");
    std::string wanted;
    double last = celsius(random);
    for (int i = 0; i < 20; ++i) {
      last += static_cast<double>(random() % 7) - 3;
      const double tenths = std::round(last * 10) / 10;
      const double shown = fahrenheit ? std::round((tenths * 1.8 + 32) * 100) / 100 : tenths;
      const int seconds = (clock ? 36000 : 0) + i * 60;
      char line[64];
      std::snprintf(line, sizeof line, "%.2f", shown);
      std::string figure = line;
      if (semicolon) figure.replace(figure.find('.'), 1, ",");
      char time[32];
      std::snprintf(time, sizeof time, "%02d:%02d", seconds / 3600, seconds / 60 % 60);
      text += (clock ? time : std::to_string(seconds)) + (semicolon ? ";" : ",") + figure + "\r\n";
      wanted += (wanted.empty() ? "" : " ") + std::to_string(seconds) + "=" + record::celsius_text(tenths);
    }
    record::LogWish wish;
    wish.coldest = -60;
    const ReadLog read = read_log(text, wish);
    CAPTURE(text);
    CHECK(read.faults() == "");
    CHECK(read.readings() == wanted);
  }
}

TEST_CASE("no bytes make the reader fall, and every fault has a place and words") {
  std::mt19937 random(23);
  const std::string start = "date;time;core °C\n2026-11-03;10:15;61,2\n2026-11-03;10:16;\"61,6\"\n2026-11-03;10:17;62,0\n";
  for (int round = 0; round < 3000; ++round) {
    std::string text = start;
    for (auto n = random() % 6; n > 0; --n) {
      const std::size_t at = random() % text.size();
      if (random() % 3 == 0) text.erase(at, random() % 5);
      if (text.empty()) text = ";";
      if (random() % 2 == 0) text[random() % text.size()] = static_cast<char>(random() % 256);
      if (random() % 3 == 0) text.insert(random() % text.size(), std::string(1, ",;\"\n\t:0-"[random() % 8]));
    }
    const ReadLog read = read_log(text);
    CAPTURE(text);
    for (const base::Finding& one : read.log.faults) {
      CHECK(one.where.end <= text.size());
      CHECK_FALSE(one.message.empty());
      CHECK_FALSE(one.message.ends_with('.'));
      CHECK(rules::rule_by_id(one.rule) != nullptr);
    }
    for (std::size_t i = 1; i < read.log.readings.size(); ++i)
      CHECK(read.log.readings[i].seconds > read.log.readings[i - 1].seconds);
  }
}

TEST_CASE("the bad example of each rule on logs raises it alone, and the good one nothing") {
  std::size_t seen = 0;
  for (const rules::Rule* rule : rules::rules()) {
    if (!rule->id.starts_with("log-")) continue;
    ++seen;
    CAPTURE(rule->id);
    const ReadLog bad = read_log(std::string(rule->bad));
    REQUIRE(bad.log.faults.size() == 1);
    CHECK(bad.log.faults.front().rule == rule->id);
    CHECK_FALSE(bad.log.faults.front().advice.empty());
    CHECK(read_log(std::string(rule->good)).faults() == "");
  }
  CHECK(seen == 5);
}
