#include "tests/change/converting.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

std::string baked(const std::string& oven, const std::string& after = " for <time>30 min</time>") {
  return fiche_around("<step do=\"bake\">Bake at " + oven + after + ".</step>", "units=\"metric\"");
}

ConvertWish oven_wish(System units, const std::string& oven) { return {units, By::as_written, oven, ""}; }

}  // namespace

TEST_CASE("a static oven's figure is set lower for a fan, a fan's higher for a static one") {
  struct Row {
    const char* text;
    const char* mode;
    System units;
    const char* wanted;
    const char* becomes;
  };
  // Common practice: 20 °C, 25 °F; then the dial's own steps of 5 °C and 25 °F.
  const Row rows[] = {{"180 °C", "static", System::metric, "fan", "160 °C"},
                      {"160 °C", "fan", System::metric, "static", "180 °C"},
                      {"170–180 °C", "static", System::metric, "fan", "150–160 °C"},
                      {"about 200 °C", "static", System::metric, "fan", "about 180 °C"},
                      {"350 °F", "static", System::us, "fan", "325 °F"},
                      {"325 °F", "fan", System::us, "static", "350 °F"},
                      {"180 °C", "static", System::us, "fan", "325 °F"}};
  for (const Row& row : rows) {
    CAPTURE(row.text, row.wanted, row.becomes);
    const std::string own = baked("<oven-temp mode=\"" + std::string(row.mode) + "\">" + row.text + "</oven-temp>");
    const Result made = converted(own, oven_wish(row.units, row.wanted));
    CHECK(inside(made) == "<step do=\"bake\">Bake at <oven-temp mode=\"" + std::string(row.wanted) + "\" was=\"" + row.text +
                              "\" was-mode=\"" + row.mode + "\">" + row.becomes + "</oven-temp> for <time>30 min</time>.</step>");
    REQUIRE(made.finding("oven-mode-changed") != nullptr);
    CHECK(made.finding("oven-mode-changed")->advice.find("check from 24 min") == 0);
    CHECK(converted(made.xml, wish(row.text == std::string_view("350 °F") || row.text == std::string_view("325 °F")
                                       ? System::us
                                       : System::metric))
              .xml == own);
  }
}

TEST_CASE("a figure for the wanted oven, for a deck or for nobody knows which stays") {
  for (const char* oven : {"<oven-temp mode=\"fan\">160 °C</oven-temp>",
                           "<oven-temp mode=\"static\">180 °C</oven-temp> or <oven-temp mode=\"fan\">165 °C</oven-temp>",
                           "<oven-temp mode=\"deck\" top=\"220 °C\" bottom=\"180 °C\">200 °C</oven-temp>",
                           "<oven-temp>180 °C</oven-temp>", "<oven-temp mode=\"static\">moderate oven</oven-temp>"}) {
    CAPTURE(oven);
    const std::string own = baked(oven);
    CHECK(converted(own, oven_wish(System::metric, "fan")).xml == own);
  }
  CHECK(converted(baked("<oven-temp>180 °C</oven-temp>"), oven_wish(System::metric, "fan")).finding("oven-mode-unknown"));
  CHECK(converted(baked("<oven-temp mode=\"deck\">200 °C</oven-temp>"), oven_wish(System::metric, "fan"))
            .finding("oven-mode-unknown"));
  CHECK_FALSE(converted(baked("<oven-temp mode=\"fan\">160 °C</oven-temp>"), oven_wish(System::metric, "fan"))
                  .finding("oven-mode-unknown"));
}

TEST_CASE("both of an oven's two figures move with its mode") {
  const std::string own = baked("<oven-temp mode=\"static\" also=\"350 °F\">180 °C</oven-temp>");
  const Result made = converted(own, oven_wish(System::metric, "fan"));
  CHECK(inside(made).find("mode=\"fan\" also=\"325 °F\"") != std::string::npos);
  CHECK(inside(made).find(">160 °C<") != std::string::npos);
  CHECK(converted(made.xml, wish(System::metric)).xml == own);
}

TEST_CASE("where the step tells no time, the advice is to look early") {
  const Result made = converted(baked("<oven-temp mode=\"static\">180 °C</oven-temp>", ""), oven_wish(System::metric, "fan"));
  REQUIRE(made.finding("oven-mode-changed") != nullptr);
  CHECK(made.finding("oven-mode-changed")->advice == "look early; times are not recalculated");
}

TEST_CASE("a gas mark becomes a dial figure") {
  // Mark 4 is 350 °F, mark 1/2 is 250 °F: common practice.
  struct Row {
    const char* text;
    System units;
    const char* becomes;
  };
  for (const Row& row : {Row{"gas mark 4", System::metric, "180 °C"}, Row{"gas mark 4", System::us, "350 °F"},
                         Row{"gas mark 1/2", System::us, "250 °F"}}) {
    CAPTURE(row.text, row.becomes);
    const std::string own = baked("<oven-temp mode=\"static\">" + std::string(row.text) + "</oven-temp>", "");
    CHECK(inside(converted(own, wish(row.units))).find(">" + std::string(row.becomes) + "<") != std::string::npos);
    CHECK(converted(converted(own, wish(row.units)).xml, wish(System::imperial)).xml.find(">" + std::string(row.text) + "<") !=
          std::string::npos);
  }
}
