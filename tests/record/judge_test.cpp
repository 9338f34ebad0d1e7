#include "core/record/judge.h"

#include <catch2/catch.hpp>

#include <memory>
#include <string>

#include "core/fiche/fiche.h"
#include "core/format/format.h"
#include "core/record/control_limit.h"
#include "core/record/kills.h"
#include "tests/record/logs.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

/// A fiche with one control point, held in memory.
struct OnePoint {
  std::shared_ptr<const fiche::Document> document;
  fiche::Kitchen kitchen;
  fiche::Fiche fiche;
  record::ControlPoint point;

  explicit OnePoint(const std::string& limit, const std::string& foods = "", const std::string& more = "",
                    const std::string& language = "en") {
    const std::string text = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"" + language +
                             "\"><title>F</title><component id=\"c\" title=\"Part\">" + foods +
                             "<step do=\"cook\">Cook.<control hazard=\"germs\" " + more + ">" + limit +
                             "</control></step></component></fiche>";
    document = format::read(std::make_shared<const base::Source>("f.fiche.xml", text)).document;
    REQUIRE(document != nullptr);
    fiche = fiche::read_fiche(*document, kitchen);
    const auto points = record::control_points(fiche);
    REQUIRE(points.size() == 1);
    point = points.front();
  }
};

std::string words(const record::Verdict& verdict) {
  std::string out(record::outcome_name(verdict.outcome));
  for (const std::string& line : verdict.says) out += " | " + line;
  return out;
}

std::string judged(const std::string& limit, const std::string& log, const std::string& more = "") {
  const OnePoint one(limit, "", more);
  return words(record::judge(one.point.asks, read_log(log).log));
}

const std::string cooling =
    "From <food-temp>57 °C</food-temp> to <food-temp>21 °C</food-temp> within <time>2 h</time> and to "
    "<food-temp>at most 5 °C</food-temp> within <time>4 h</time> more.";

}  // namespace

TEST_CASE("a core that is to be reached and held") {
  const std::string limit = "The core reaches <food-temp for=\"4 min\">at least 63 °C</food-temp>.";
  CHECK(judged(limit, "time,core\n10:01,62.9\n10:02,63\n10:06,64\n10:07,62\n") ==
        "met | at least 63 °C from 10:02 for 4 min, 4 min asked");
  CHECK(judged(limit, "time,core\n10:01,62\n10:02,63\n10:03,64\n10:04,62\n") ==
        "missed | at least 63 °C from 10:02 for 1 min, 4 min asked");
  CHECK(judged(limit, "time,core\n10:00,60\n10:02,63\n10:05,64\n10:06,62\n") ==
        "not shown | at least 63 °C from 10:02 for 3 min, 4 min asked; the readings stand too far apart to show more");
  CHECK(judged("Cook to <food-temp for=\"15 s\">at least 74 °C</food-temp>.", "time,core\n10:00,70\n10:01,74.2\n10:02,70\n") ==
        "not shown | at least 74 °C from 10:01 for 0 s, 15 s asked; the readings stand too far apart to show more");
  CHECK(judged(limit, "time,core\n10:00,60\n10:02,63\n10:05,64\n") ==
        "not shown | at least 63 °C from 10:02 for 3 min, 4 min asked; what came before or after is not in the log");
  CHECK(judged(limit, "time,core\n10:00,60\n10:02,61\n10:05,62.9\n") ==
        "missed | at least 63 °C not reached: 62.9 °C at the hottest, at 10:05");
}

TEST_CASE("a hold is not counted across what parts the log") {
  const std::string limit = "<food-temp for=\"4 min\">at least 63 °C</food-temp>";
  CHECK(judged(limit, "time,core\n10:00,63\n10:02,64\n10:03,x\n10:04,64\n10:06,64\n10:07,50\n") ==
        "not shown | at least 63 °C from 10:00 for 2 min, 4 min asked; what came before or after is not in the log");
}

TEST_CASE("a word of the sentence that is not of the figure does not turn the limit round") {
  const std::string cool = "time,core\n10:00,20\n10:30,60\n10:40,55\n";
  for (const std::string limit : {
           "Covered under paper, the core reaches <food-temp>74 °C</food-temp>.",
           "Covered under paper, the core is never below <food-temp>74 °C</food-temp>.",
           "The core must not stay under <food-temp>74 °C</food-temp>.",
           "Put below the grill until the core is above <food-temp>74 °C</food-temp>.",
           "At most two trays; the core at least <food-temp>74 °C</food-temp>.",
       }) {
    INFO(limit);
    CHECK(judged(limit, cool).substr(0, 3) != "met");
  }
  CHECK(judged("Never above <food-temp>5 °C</food-temp>.", "time,core\n10:00,4\n10:30,7\n").substr(0, 6) == "missed");
  CHECK(judged("Do not serve it before it is above <food-temp>74 °C</food-temp>.", cool) ==
        "not shown | its words do not say whether the figure is a least or a most: look at it by hand, and write which");
  CHECK(judged("Put below the grill until the core is above <food-temp>74 °C</food-temp>.",
               "time,core\n10:00,20\n10:30,75\n") == "met | 75 °C at 10:30: 74 °C reached");
}

TEST_CASE("cooling in two stages, each with its clock") {
  CHECK(judged(cooling, "time,core\n10:00,80\n10:30,57.5\n10:35,55\n12:20,21.4\n12:25,20.9\n16:00,5.4\n16:10,4.9\n") ==
        "met | 20.9 °C at 12:25: 21 °C reached 1 h 55 min after 57 °C at 10:30, 2 h allowed"
        " | 4.9 °C at 16:10: at most 5 °C reached 3 h 50 min after that, 4 h allowed");
  CHECK(judged(cooling, "time,core\n10:00,80\n10:30,57.5\n10:35,55\n12:50,21.4\n12:55,20.9\n16:00,4.9\n")
            .starts_with("missed | 20.9 °C at 12:55: 21 °C reached 2 h 25 min after 57 °C at 10:30, 2 h allowed"));
  CHECK(judged(cooling, "time,core\n10:00,57.5\n10:05,56\n12:00,21.4\n12:05,20.9\n15:00,4.9\n")
            .starts_with("not shown | 20.9 °C at 12:05: 21 °C reached 1 h 55 min to 2 h 5 min after 57 °C at 10:00, 2 h "
                         "allowed; the readings stand too far apart to show it"));
  CHECK(judged(cooling, "time,core\n10:00,50\n11:00,20\n14:00,4\n")
            .starts_with("not shown | 20 °C at 11:00: 21 °C reached 1 h after 57 °C at 10:00, 2 h allowed; but the log begins "
                         "at 50 °C, so how long it took from 57 °C is not shown"));
  CHECK(judged(cooling, "time,core\n10:00,60\n11:00,30\n") ==
        "not shown | 21 °C not reached: 30 °C at the coldest, at 11:00; the log ends after 0 s of 2 h");
  CHECK(judged(cooling, "time,core\n10:00,60\n10:05,56\n13:00,30\n") ==
        "missed | 21 °C not reached: 30 °C at the coldest, at 13:00, and 2 h were over");
}

TEST_CASE("a food that is cooked before it is cooled is counted from its hottest") {
  const std::string limit = "At <food-temp>at most 5 °C</food-temp> within <time>90 min</time>.";
  CHECK(judged(limit, "time,core\n9:00,4\n9:20,83\n10:00,20\n10:40,4.8\n") ==
        "met | 4.8 °C at 10:40: at most 5 °C reached 1 h 20 min after the hottest reading at 09:20, 1 h 30 min allowed");
  CHECK(judged(limit, "minutes,core\n0,70\n50,20\n100,5.5\n110,5\n") ==
        "missed | 5 °C after 1 h 50 min: at most 5 °C reached 1 h 50 min after the first reading, 1 h 30 min allowed");
}

TEST_CASE("what is kept hot stays so; what is kept cold may take its time to get there") {
  const std::string hot = "It stays at <food-temp>at least 63 °C</food-temp>.";
  CHECK(judged(hot, "time,soup\n12:00,70\n12:30,66\n13:00,63\n") ==
        "met | at least 63 °C in every reading from 12:00 to 13:00");
  CHECK(judged(hot, "time,soup\n12:00,70\n12:30,58\n12:40,57.5\n13:00,66\n") ==
        "missed | 58 °C at 12:30, not at least 63 °C; 57.5 °C at the worst, 30 min outside in all");
  const std::string cold = "It is at <food-temp>at most 5 °C</food-temp> until it is served.";
  CHECK(judged(cold, "time,core\n8:00,14\n9:00,5\n12:00,3\n") == "met | at most 5 °C in every reading from 09:00 to 12:00");
  CHECK(judged(cold, "time,core\n8:00,14\n9:00,5\n12:00,7\n")
            .starts_with("missed | 7 °C at 12:00, not at most 5 °C; 7 °C at the worst"));
  CHECK(judged(hot, "time,soup\n12:00,70\n12:01,70\n12:02,x\n12:03,70\n") ==
        "not shown | at least 63 °C in every reading from 12:00 to 12:03, but not without a break");
  // "Hold for service" and a hazard "while it is held" are holding too.
  CHECK(judged("Hold for service at <food-temp>60 °C or higher</food-temp>.", "time,c\n12:00,63\n12:30,50\n")
            .starts_with("missed"));
  // "Every 30 min" is a check that goes on, even where the limit does not say "stays".
  CHECK(judged("At <food-temp>at least 57 °C</food-temp>.", "time,c\n12:00,60\n12:30,50\n", "often=\"every 30 min\"")
            .starts_with("missed"));
}

TEST_CASE("a log in Fahrenheit is told in Fahrenheit, whatever the limit's scale") {
  CHECK(judged("Reaches <food-temp>at least 63 °C</food-temp>.", "time,core °F\n10:00,100\n10:10,146\n") ==
        "met | 146 °F at 10:10: at least 63 °C reached");
  CHECK(judged("From <food-temp>135 °F</food-temp> to <food-temp>70 °F</food-temp> within <time>2 h</time>.",
               "time,core °F\n10:00,140\n10:05,134\n11:00,69\n") ==
        "met | 69 °F at 11:00: 70 °F reached 1 h after 135 °F at 10:00, 2 h allowed");
}

TEST_CASE("a range is not left at the far side") {
  const std::string limit = "Cooked to <food-temp>82–84 °C</food-temp>.";
  CHECK(judged(limit, "time,c\n12:00,60\n12:05,82.4\n") == "met | 82.4 °C at 12:05: 82–84 °C reached");
  CHECK(judged(limit, "time,c\n12:00,60\n12:05,82.4\n12:06,85.5\n") ==
        "missed | 82.4 °C at 12:05: 82–84 °C reached | 85.5 °C at 12:06, beyond 82–84 °C");
}

TEST_CASE("a limit that no thermometer shows is for a person") {
  CHECK(judged("No shell in the bowl.", "time,c\n12:00,60\n") ==
        "not shown | its limit is of no temperature that a log can show: look at it by hand");
  CHECK(judged("Held at <food-temp>63 °C</food-temp>.", "time,c\n12:00,60\n")
            .starts_with("not shown | its words do not say whether the figure is a least or a most"));
}

TEST_CASE("limits are read in four languages") {
  const auto asks = [](const std::string& limit, const std::string& language) {
    return OnePoint(limit, "", "", language).point.asks;
  };
  const auto french =
      asks("De <food-temp>63 °C</food-temp> à <food-temp>au plus 10 °C</food-temp> en moins de <time>2 h</time>.", "fr");
  REQUIRE(french.stages.size() == 1);
  CHECK(*french.stages[0].from == 63);
  CHECK(*french.stages[0].most == 10);
  CHECK(*french.stages[0].within == 7200);
  const auto german = asks("Es bleibt bei <food-temp>mindestens 65 °C</food-temp>.", "de");
  CHECK(german.way == record::ControlLimit::Way::stay);
  CHECK(*german.stages[0].least == 65);
  const auto spanish = asks("El centro alcanza <food-temp>al menos 70 °C</food-temp>.", "es");
  CHECK(spanish.way == record::ControlLimit::Way::reach);
}

TEST_CASE("the heat is told of what the component is made of") {
  const std::string limit = "The core reaches <food-temp>at least 74 °C</food-temp>.";
  const OnePoint turkey(limit, "<ingredient id=\"t\" food=\"turkey\">2 kg</ingredient>");
  const ReadLog read = read_log("time,core\n10:00,60\n10:28,60\n10:29,20\n");
  const auto kills = record::kills_of(turkey.fiche, turkey.point, read.log);
  REQUIRE(kills.size() == 2);
  CHECK(kills[0].of->id == "listeria-cooked");
  CHECK(kills[1].of->id == "salmonella-poultry");
  // 28 min at 60 °C: 1680 s of the 1686 s that the tables ask for 7.
  CHECK(kills[1].logs == Approx(7 * 1680 / 1686.0).margin(0.05));
  // Nothing is counted where nothing was read.
  const auto parted =
      record::kills_of(turkey.fiche, turkey.point, read_log("time,core\n10:00,60\n10:14,x\n10:28,60\n10:29,20\n").log);
  CHECK(parted[1].logs < 0.05);
  const OnePoint custard(
      "At <food-temp>at most 5 °C</food-temp> within <time>90 min</time>.",
      "<ingredient id=\"y\" food=\"egg-yolk\">120 g</ingredient><ingredient id=\"s\" food=\"sugar-white\">110 g</ingredient>");
  CHECK(record::kills_of(custard.fiche, custard.point, read_log("time,core\n10:00,83\n11:00,5\n").log).empty());
  const auto cooked = record::kills_of(custard.fiche, custard.point, read_log("time,core\n10:00,20\n10:10,83\n11:00,5\n").log);
  REQUIRE(cooked.size() == 1);
  CHECK(cooked[0].of->id == "salmonella-sweet-yolk");
}
