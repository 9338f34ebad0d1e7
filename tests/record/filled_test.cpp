#include "core/record/filled.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <functional>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "core/format/format.h"
#include "core/rules/rule.h"

using namespace tamis;

namespace {

constexpr std::string_view roast = R"(<fiche xmlns="urn:tamis:fiche:1" id="roast" revision="2" lang="en"><title>Roast</title>
<yield portions="8"/><component id="c" title="Roast">
<ingredient id="w" food="water">1 kg</ingredient><ingredient id="b" name="beef, topside">2 kg</ingredient><ingredient id="s" name="=salt">20 g</ingredient>
<step do="roast">Roast it.<control hazard="survival" who="sous" action="back into the oven">The core reaches <food-temp>at least 63 °C</food-temp>.</control></step>
<step do="cool">Cool it.<control hazard="growth" action="discard">From <food-temp>57 °C</food-temp> to <food-temp>at most 5 °C</food-temp> within <time>6 h</time>.</control></step>
<step do="hold">Hold it.<control hazard="growth" often="every 30 min">At <food-temp>at least 57 °C</food-temp>.</control></step>
<step do="sift">Sift.<control hazard="a foreign body">The sieve is whole.</control></step>
</component></fiche>)";

struct Held {
  std::shared_ptr<const fiche::Document> document =
      format::read(std::make_shared<const base::Source>("r.fiche.xml", std::string(roast))).document;
  fiche::Kitchen kitchen;
  fiche::Fiche fiche = fiche::read_fiche(*document, kitchen);
  std::vector<record::ControlPoint> points = record::control_points(fiche);
  std::string blank = record::blank_csv(record::blank_record(fiche, points));
};

/// What is written into a line: found,time,initials,action.
using Fill = std::function<std::string(const std::string& part, const std::string& of)>;

std::string good(const std::string& part, const std::string& of) {
  if (part == "fiche") return ",,,";
  if (of == "date") return "2026-11-03,,,";
  if (part == "verified") return "chef,2026-11-04,c,";
  if (part == "batch" || part == "supplier lot") return "text 1,,k,";
  if (part == "probe check") return of == "in ice water" ? "0.6,,k," : ",,,";
  if (part == "control point 1") return of == "reading 1" ? "64.2,12:05,k," : ",,,";
  if (part == "control point 2") return of == "reading 1" ? "57,13:00,k," : "4.8,18:30,k,";
  if (part == "control point 3") return of == "reading 1" ? "66,12:30,k," : of == "reading 2" ? "64,13:00,k," : ",,,";
  return "yes,,k,";
}

struct Read {
  Held held;
  std::shared_ptr<base::Source> source;
  record::FilledRecord record;

  explicit Read(const Fill& fill) {
    std::string out;
    for (std::size_t at = 0; at < held.blank.size();) {
      const std::size_t end = held.blank.find("\r\n", at);
      std::string line = held.blank.substr(at, end - at);
      at = end + 2;
      if (!out.empty()) {
        const std::size_t comma = line.find(',');
        const std::string part = line.substr(0, comma);
        const std::string filled = fill(part, line.substr(comma + 1, line.find(',', comma + 1) - comma - 1));
        if (filled == "gone") continue;
        line.resize(line.size() - 3);
        line += filled;
      }
      out += line + "\r\n";
    }
    source = std::make_shared<base::Source>("r.csv", out);
    record = record::read_filled(*source, record::read_csv(*source), held.fiche, held.points);
  }

  [[nodiscard]] std::string faults() const {
    std::string out;
    for (const base::Finding& one : record.faults)
      out += std::to_string(source->place(one.where.begin).line) + " " + one.rule + ": " + one.message + "\n";
    return out;
  }
  [[nodiscard]] std::string outcomes() const {
    std::string out;
    for (const auto& point : record.points)
      out += (out.empty() ? "" : ", ") + std::string(record::outcome_name(point.verdict.outcome));
    return out;
  }
};

/// As `good`, one line written otherwise.
Fill but(const std::string& part, const std::string& of, const std::string& filled) {
  return [=](const std::string& a_part, const std::string& an_of) {
    return a_part == part && an_of == of ? filled : good(a_part, an_of);
  };
}

}  // namespace

TEST_CASE("the blank record has a line for all that is asked, and water has no lot") {
  CHECK(Held().blank ==
        "part,of,asked,found,time,initials,action taken\r\n"
        "fiche,roast,revision 2,,,,\r\n"
        "batch,date,,,,,\r\n"
        "batch,batch number,,,,,\r\n"
        "batch,size,8 portions,,,,\r\n"
        "batch,made by,,,,,\r\n"
        "supplier lot,\"beef, topside\",2 kg,,,,\r\n"
        "supplier lot,'=salt,20 g,,,,\r\n"
        "probe check,in ice water,\"0 °C, at most 1 °C off\",,,,\r\n"
        "probe check,in boiling water,\"100 °C, at most 1 °C off\",,,,\r\n"
        "control point 1,reading 1,at least 63 °C,,,,\r\n"
        "control point 1,reading 2,at least 63 °C,,,,\r\n"
        "control point 1,reading 3,at least 63 °C,,,,\r\n"
        "control point 2,reading 1,from 57 °C,,,,\r\n"
        "control point 2,reading 2,at most 5 °C within 6 h,,,,\r\n"
        "control point 3,reading 1,at least 57 °C,,,,\r\n"
        "control point 3,reading 2,at least 57 °C,,,,\r\n"
        "control point 3,reading 3,at least 57 °C,,,,\r\n"
        "control point 3,reading 4,at least 57 °C,,,,\r\n"
        "control point 3,reading 5,at least 57 °C,,,,\r\n"
        "control point 3,reading 6,at least 57 °C,,,,\r\n"
        "control point 4,met,The sieve is whole.,,,,\r\n"
        "verified,verifier,,,,,\r\n");
}

TEST_CASE("a record that is filled in reads back with nothing to say") {
  const Read read(good);
  CHECK(read.faults() == "");
  CHECK(read.outcomes() == "met, met, met, met");
  CHECK(read.record.date == "2026-11-03");
  CHECK(read.record.verifier == "chef");
  CHECK(read.record.lots == 2);
  CHECK(read.record.lots_asked == 2);
  CHECK(read.record.probe == "0.6 °C in ice water");
}

TEST_CASE("each line that is needed and left empty, or gone, is named") {
  CHECK(Read(but("batch", "date", ",,,")).faults() == "3 record-incomplete: no date\n");
  CHECK(Read(but("batch", "date", "03/11/26,,,")).faults() == "3 record-incomplete: \"03/11/26\" is no date\n");
  CHECK(Read(but("batch", "made by", ",,,")).faults() == "6 record-incomplete: it does not say who made it\n");
  CHECK(Read(but("supplier lot", "'=salt", ",,,")).faults() == "8 record-incomplete: no supplier's lot for =salt\n");
  CHECK(Read(but("supplier lot", "'=salt", "gone")).faults() ==
        "23 record-incomplete: no supplier's lot for =salt: its line is gone\n");
  CHECK(Read(but("probe check", "in ice water", ",,,")).faults() == "9 record-incomplete: the probe was not checked\n");
  CHECK(Read(but("verified", "verifier", ",,,")).faults() == "23 record-incomplete: nobody has verified it\n");
  CHECK(Read(but("verified", "verifier", "chef,,c,")).faults() == "23 record-incomplete: the verifier wrote no date\n");
  CHECK(Read(but("control point 1", "reading 1", ",,,")).faults() == "11 record-incomplete: control point 1: no reading\n");
  CHECK(Read(but("control point 1", "reading 1", "64,12:05,,")).faults() ==
        "11 record-incomplete: a reading without initials\n");
  CHECK(Read(but("control point 2", "reading 2", "4.8,,k,")).faults() == "15 record-incomplete: a reading without its time\n");
  CHECK(Read(but("control point 2", "reading 2", "4.8,,k,")).outcomes() == "met, not shown, met, met");
}

TEST_CASE("a miss stands with what was done about it, or is asked") {
  CHECK(Read(but("control point 1", "reading 1", "59,12:05,k,")).faults() ==
        "11 record-incomplete: 59 °C at 12:05, not at least 63 °C, and no action is written\n");
  CHECK(Read(but("control point 1", "reading 1", "59,12:05,k,discarded")).faults() == "");
  CHECK(Read(but("control point 1", "reading 1", "59,12:05,k,discarded")).outcomes() == "missed, met, met, met");
  const Read again([](const std::string& part, const std::string& of) {
    if (part != "control point 1") return good(part, of);
    return std::string(of == "reading 1" ? "59,12:05,k,back into the oven" : of == "reading 2" ? "63.4,12:20,k," : ",,,");
  });
  CHECK(again.faults() == "");
  CHECK(again.outcomes() == "met, met, met, met");
  CHECK(Read(but("control point 2", "reading 2", "4.8,19:30,k,")).faults() ==
        "15 record-incomplete: the limit was missed, and no action is written\n");
  CHECK(Read(but("control point 2", "reading 2", "4.8,19:30,k,discarded")).outcomes() == "met, missed, met, met");
  CHECK(Read(but("probe check", "in ice water", "1.8,,k,")).faults() ==
        "9 record-incomplete: the probe shows 1.8 °C in ice water, farther off than it may be, and no action is written\n");
  CHECK(Read(but("control point 4", "met", "no,,k,")).outcomes() == "met, met, met, missed");
}

TEST_CASE("a bare figure is on the scale of what is asked, and one that cannot be is not taken") {
  CHECK(Read(but("control point 1", "reading 1", "147,12:05,k,")).faults() ==
        "11 log-wrong-scale: \"147\" would be 147 °C, which this food never is\n");
  const std::string text =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en-US\"><title>F</title><component id=\"c\" title=\"C\"><step>Cook."
      "<control hazard=\"survival\">It reaches <food-temp>165 °F or higher</food-temp>.</control></step></component></fiche>";
  const auto document = format::read(std::make_shared<const base::Source>("f.fiche.xml", text)).document;
  const fiche::Kitchen kitchen;
  const fiche::Fiche fiche = fiche::read_fiche(*document, kitchen);
  const auto points = record::control_points(fiche);
  const std::string blank = record::blank_csv(record::blank_record(fiche, points));
  CHECK(blank.find("probe check,in ice water,\"32 °F, at most 2 °F off\"") != std::string::npos);
  CHECK(blank.find("probe check,in boiling water,\"212 °F, at most 2 °F off\"") != std::string::npos);
  const auto read = [&](const std::string& rows) {
    const base::Source source("r.csv", std::string(record::record_heading) + "\n" + rows);
    return record::read_filled(source, record::read_csv(source), fiche, points);
  };
  const auto good = read(
      "probe check,in ice water,\"32 °F, at most 2 °F off\",33.5,,k,\ncontrol point 1,reading 1,165 °F or "
      "higher,166,12:05,k,\n");
  CHECK(good.probe == "33.5 °F in ice water");
  CHECK(good.probe_within == record::Outcome::met);
  CHECK(good.points.at(0).verdict.says == std::vector<std::string>{"166 °F at 12:05: 165 °F or higher reached"});
  const auto celsius = read("control point 1,reading 1,165 °F or higher,75 °C,12:05,k,\n");
  CHECK(celsius.points.at(0).verdict.outcome == record::Outcome::met);
}

/// What two readings, or one, of a core that is to be held come to.
record::Outcome held(const std::string& limit, const std::string& rows) {
  const std::string text =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\"><title>F</title><component id=\"c\" title=\"C\"><step>Cook."
      "<control hazard=\"survival\">Cook to " + limit + ".</control></step></component></fiche>";
  const auto document = format::read(std::make_shared<const base::Source>("f.fiche.xml", text)).document;
  const fiche::Kitchen kitchen;
  const fiche::Fiche fiche = fiche::read_fiche(*document, kitchen);
  const auto points = record::control_points(fiche);
  const base::Source source("r.csv", std::string(record::record_heading) + "\n" + rows);
  return record::read_filled(source, record::read_csv(source), fiche, points).points.at(0).verdict.outcome;
}

TEST_CASE("a hold of seconds is shown by two readings within a minute") {
  const std::string limit = "<food-temp for=\"15 s\">at least 74 °C</food-temp>";
  CHECK(held(limit, "control point 1,reading 1,,74.5,12:05,k,\ncontrol point 1,reading 2,,74.8,12:05,k,\n") ==
        record::Outcome::met);
  CHECK(held(limit, "control point 1,reading 1,,74.5,12:05,k,\n") == record::Outcome::open);
}

TEST_CASE("a hold of minutes is shown by the minutes that were written, not by those that may have been") {
  const auto until = [](const std::string& last) {
    return held("<food-temp for=\"2 min\">at least 70 °C</food-temp>",
                "control point 1,reading 1,,70.5,12:05,k,\ncontrol point 1,reading 2,,71,12:" + last + ",k,\n");
  };
  CHECK(until("07") == record::Outcome::met);
  CHECK(until("06") == record::Outcome::open);
}

TEST_CASE("checks that were let slip are said with the pause between them") {
  CHECK(Read(but("control point 3", "reading 2", "64,14:15,k,")).faults() ==
        "17 record-incomplete: no reading for 1 h 45 min, from 12:30 to 14:15\n");
}

TEST_CASE("figures and times that cannot be read are said, on either scale") {
  CHECK(Read(but("control point 1", "reading 1", "hot,12:05,k,")).faults() == "11 log-unreadable: \"hot\" is no temperature\n");
  CHECK(Read(but("control point 1", "reading 1", "64,noon,k,")).faults() == "11 log-unreadable: \"noon\" is no time\n");
  CHECK(Read(but("control point 1", "reading 1", "147 °F,12:05,k,")).outcomes() == "met, met, met, met");
  CHECK(Read(but("control point 2", "reading 2", "4.8,12:30,k,")).faults() ==
        "15 log-out-of-order: \"12:30\" comes before the reading above it\n");
}

TEST_CASE("a record of another fiche, or of another revision, is not taken for this one") {
  const auto with_head = [](const std::string& from, const std::string& to) {
    Held held;
    std::string text = held.blank;
    text.replace(text.find(from), from.size(), to);
    const base::Source source("r.csv", text);
    return record::read_filled(source, record::read_csv(source), held.fiche, held.points);
  };
  const record::FilledRecord other = with_head("fiche,roast,", "fiche,stew,");
  CHECK_FALSE(other.of_this_fiche);
  REQUIRE(other.faults.size() == 1);
  CHECK(other.faults[0].message == "a record of \"stew\", and this fiche is \"roast\"");
  const record::FilledRecord older = with_head("revision 2", "revision 1");
  CHECK(older.of_this_fiche);
  CHECK(older.faults[0].message == "a record of revision 1, and this fiche is revision 2");
}

TEST_CASE("the bad example of record-incomplete raises it, and the good one has what that lacks") {
  const rules::Rule* rule = rules::rule_by_id("record-incomplete");
  REQUIRE(rule != nullptr);
  Held held;
  const auto has_no_date = [&](std::string_view text) {
    const base::Source source("r.csv", std::string(text));
    const record::FilledRecord read = record::read_filled(source, record::read_csv(source), held.fiche, held.points);
    return std::any_of(read.faults.begin(), read.faults.end(),
                       [](const base::Finding& one) { return one.rule == "record-incomplete" && one.message == "no date"; });
  };
  CHECK(has_no_date(rule->bad));
  CHECK_FALSE(has_no_date(rule->good));
}

TEST_CASE("no bytes make the reader of records fall, and every fault has a place and words") {
  const Read whole(good);
  std::mt19937 random(5);
  for (int round = 0; round < 2000; ++round) {
    std::string text = whole.source->bytes();
    for (auto n = random() % 8; n > 0; --n) {
      const std::size_t at = random() % text.size();
      if (random() % 3 == 0) text.erase(at, random() % 40);
      if (text.empty()) text = ",";
      if (random() % 2 == 0) text[random() % text.size()] = static_cast<char>(random() % 256);
      if (random() % 3 == 0) text.insert(random() % text.size(), std::string(1, ",;\"\n\t:0-"[random() % 8]));
    }
    CAPTURE(text);
    const base::Source source("r.csv", text);
    const record::FilledRecord read =
        record::read_filled(source, record::read_csv(source), whole.held.fiche, whole.held.points);
    CHECK(read.points.size() == (read.of_this_fiche ? 4U : 0U));
    for (const base::Finding& one : read.faults) {
      CHECK(one.where.begin <= one.where.end);
      CHECK(one.where.end <= text.size());
      CHECK_FALSE(one.message.empty());
      CHECK(rules::rule_by_id(one.rule) != nullptr);
    }
  }
}
